package gapwise.server.job.reference;

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

  /** What was found. */
  record Done(ReferencesFound found) implements ReferenceState {}

  /**
   * It broke off through no fault of the person.
   *
   * @param message why, and what to do
   */
  record Failed(String message) implements ReferenceState {}
}
