package gapwise.evidence;

import java.util.Objects;

/** One author of a paper, as a list of authors names them. */
public sealed interface AuthorName {
  /** The name as a list of authors prints it: the family name, a comma, the given names. */
  String line();

  /**
   * A person.
   *
   * @param family family name with what stands before it, such as "van den Berg"; never blank
   * @param given given names or initials; may be empty
   * @param suffix what stands after the name, such as "Jr"; may be empty
   */
  record Person(String family, String given, String suffix) implements AuthorName {
    public Person {
      Objects.requireNonNull(given, "given");
      Objects.requireNonNull(suffix, "suffix");
      if (family.isBlank()) {
        throw new IllegalArgumentException("a person needs a family name");
      }
    }

    @Override
    public String line() {
      if (suffix.isEmpty()) {
        return given.isEmpty() ? family : family + ", " + given;
      }
      return family + ", " + given + ", " + suffix;
    }
  }

  /**
   * A group, or a name that cannot be taken apart for certain.
   *
   * @param text the name as printed; never blank
   */
  record Literal(String text) implements AuthorName {
    public Literal {
      if (text.isBlank()) {
        throw new IllegalArgumentException("a name needs a letter");
      }
    }

    @Override
    public String line() {
      return text;
    }
  }
}
