package gapwise.screening;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

/** What is read of a paper when it is chosen or not. */
public enum Stage {
  /** Title and abstract. */
  TITLE("title", "Title and abstract", Set.of(Choice.KEEP, Choice.UNSURE, Choice.EXCLUDE)),
  /** The full text. */
  FULL_TEXT("full-text", "Full text", Set.of(Choice.KEEP, Choice.EXCLUDE, Choice.NOT_HAD));

  private final String code;
  private final String label;
  private final Set<Choice> choices;

  Stage(String code, String label, Set<Choice> choices) {
    this.code = code;
    this.label = label;
    this.choices = choices;
  }

  /** The word in addresses and records. */
  public String code() {
    return code;
  }

  /** The word that people read. */
  public String label() {
    return label;
  }

  /** Whether something may be chosen here. */
  public boolean offers(Choice choice) {
    return choices.contains(choice);
  }

  /** Whether who leaves a paper out says why: PRISMA 2020 asks it of reports read in full. */
  public boolean asksReason() {
    return this == FULL_TEXT;
  }

  /** The stage of a word. */
  public static Optional<Stage> find(String code) {
    return Arrays.stream(values()).filter(stage -> stage.code.equals(code)).findFirst();
  }
}
