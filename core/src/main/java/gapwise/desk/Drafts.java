package gapwise.desk;

import gapwise.store.WorkingCopies;
import gapwise.store.WorkingCopy;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/**
 * The drafts of one home. Each change is on the disk when it is answered. Safe for many threads:
 * changes of different cells by different people go together, for each is made upon the latest.
 */
public final class Drafts {
  private static final String KIND = "draft";
  private static final Pattern ID = Pattern.compile("[0-9a-f]{12}|[0-9a-f]{32}");
  private static final int DIGITS = 12;

  /** Tries before giving up; each failed one means that somebody else's change came through. */
  private static final int MOST_TRIES = 50;

  private final WorkingCopies copies;

  public Drafts(WorkingCopies copies) {
    this.copies = Objects.requireNonNull(copies, "copies");
  }

  /** Begins one. */
  public KeptDraft begin(Draft draft, String who) {
    String random = UUID.randomUUID().toString().replace("-", "");
    // The address of a draft that one person alone may see is long enough that nobody guesses it.
    String id = draft.reader().isPresent() ? random : random.substring(0, DIGITS);
    copies.keep(KIND, id, DraftJson.write(draft), who, 0);
    return find(id).orElseThrow(() -> new IllegalStateException("draft " + id + " is gone"));
  }

  /** The draft of this name, if there is one. */
  public Optional<KeptDraft> find(String id) {
    return ID.matcher(id).matches() ? copies.find(KIND, id).map(Drafts::kept) : Optional.empty();
  }

  /** All drafts, the last kept first. */
  public List<KeptDraft> all() {
    List<KeptDraft> all = new ArrayList<>();
    copies.forEach(KIND, copy -> all.add(kept(copy)));
    return List.copyOf(all);
  }

  /**
   * Changes one, whatever others have changed meanwhile.
   *
   * @param change is asked again with the later draft where somebody else was faster
   * @return as it stands then; empty where there is none of this name
   */
  public Optional<KeptDraft> change(String id, UnaryOperator<Draft> change, String who) {
    for (int attempt = 0; attempt < MOST_TRIES; attempt++) {
      Optional<KeptDraft> before = find(id);
      if (before.isEmpty()) {
        return before;
      }
      Draft after = change.apply(before.get().draft());
      if (after.equals(before.get().draft())) {
        return before;
      }
      OptionalInt version =
          copies.keep(KIND, id, DraftJson.write(after), who, before.get().version());
      if (version.isPresent()) {
        return find(id);
      }
    }
    throw new IllegalStateException("draft " + id + " changes faster than it can be kept");
  }

  /** Ends one; whether there was one. */
  public boolean drop(String id) {
    return ID.matcher(id).matches() && copies.drop(KIND, id);
  }

  private static KeptDraft kept(WorkingCopy copy) {
    return new KeptDraft(
        copy.key(), copy.version(), copy.when(), copy.who(), DraftJson.read(copy.json()));
  }
}
