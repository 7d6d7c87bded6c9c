package gapwise.server.job.reference;

import gapwise.reference.kept.KeptLoad;
import java.util.List;
import java.util.Optional;

/** How far a load of references has come. */
public sealed interface ReferenceState {
  /** Whether it will not change by itself any more. */
  default boolean isSettled() {
    return true;
  }

  /**
   * The files are being read, or wait for those that were handed in before.
   *
   * @param records how many records were read so far
   */
  record Reading(int records) implements ReferenceState {
    @Override
    public boolean isSettled() {
      return false;
    }
  }

  /**
   * All is read and is now compared.
   *
   * @param references how many references, those of the evidence base among them
   */
  record Comparing(int references) implements ReferenceState {
    @Override
    public boolean isSettled() {
      return false;
    }
  }

  /** What was found, where something was. */
  default Optional<ReferencesFound> found() {
    return Optional.empty();
  }

  /**
   * What was found, which waits for a person.
   *
   * @param result what was found
   * @param waiting what can be kept
   */
  record Done(ReferencesFound result, Waiting waiting) implements ReferenceState {
    @Override
    public Optional<ReferencesFound> found() {
      return Optional.of(result);
    }
  }

  /** A person accepted it, and it is being kept. */
  record Keeping(ReferencesFound result, Waiting waiting) implements ReferenceState {
    @Override
    public boolean isSettled() {
      return false;
    }

    @Override
    public Optional<ReferencesFound> found() {
      return Optional.of(result);
    }
  }

  /**
   * It is kept.
   *
   * @param loads what became of each file
   */
  record Kept(ReferencesFound result, List<KeptLoad> loads) implements ReferenceState {
    public Kept {
      loads = List.copyOf(loads);
    }

    @Override
    public Optional<ReferencesFound> found() {
      return Optional.of(result);
    }
  }

  /**
   * It was accepted, and could not be kept; nothing of it was.
   *
   * @param message why, and what to do
   */
  record NotKept(ReferencesFound result, Waiting waiting, String message)
      implements ReferenceState {
    @Override
    public Optional<ReferencesFound> found() {
      return Optional.of(result);
    }
  }

  /**
   * It broke off through no fault of the person.
   *
   * @param message why, and what to do
   */
  record Failed(String message) implements ReferenceState {}
}
