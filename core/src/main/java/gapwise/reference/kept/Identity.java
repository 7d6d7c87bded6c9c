package gapwise.reference.kept;

import gapwise.reference.Reference;
import gapwise.reference.format.Format;
import java.util.Locale;

/**
 * By what a record is known again when its file is handed in once more, or a later export of the
 * same search: its format, the name that its file gives it, and the letters of its title. Records
 * without a name are known by title, first author, year and numbers.
 */
public final class Identity {
  private Identity() {}

  /**
   * The id that a record may have.
   *
   * @param attempt 0 for the one that any file gives it; 1 for the one that its file alone gives
   *     it; 2 and more for further records of the file that would have the same
   */
  public static String id(Reference reference, Format format, String file, int attempt) {
    StringBuilder identity = new StringBuilder(format.name());
    identity.append('\n').append(letters(reference.titles().main()));
    identity
        .append('\n')
        .append(reference.id().map(name -> "id " + name).orElseGet(() -> rest(reference)));
    if (attempt > 0) {
      identity.append("\nfile ").append(file);
    }
    if (attempt > 1) {
      identity.append("\nagain ").append(attempt);
    }
    return Fingerprint.id(identity.toString());
  }

  /** A hash of all that a record says; two that say the same have the same. */
  public static String content(Reference reference) {
    return Fingerprint.hash(KeptJson.write(reference));
  }

  /** The letters and digits of a title; by a rule of its own, which no better likeness changes. */
  private static String letters(String title) {
    String plain = title.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "");
    return plain.isEmpty() ? title : plain;
  }

  private static String rest(Reference reference) {
    return reference.authors().stream().findFirst().map(author -> author.line()).orElse("")
        + "|"
        + (reference.published().year().isPresent() ? reference.published().year().getAsInt() : "")
        + "|"
        + reference.identifiers().doi().orElse("")
        + "|"
        + reference.identifiers().pmid().orElse("");
  }
}
