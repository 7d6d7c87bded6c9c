package gapwise.reference;

import java.util.Objects;

/** Somebody who wrote a paper: a person or a group. */
public sealed interface Author {

  /** The name on one line, the family name first. */
  String line();

  /**
   * A person.
   *
   * @param particle what stands before the family name, such as "van den"; may be empty
   * @param family family name; never empty
   * @param given given names or initials; may be empty
   * @param suffix what stands after the name, such as "Jr"; may be empty
   */
  record Person(String particle, String family, String given, String suffix) implements Author {
    public Person {
      Objects.requireNonNull(particle, "particle");
      Objects.requireNonNull(given, "given");
      Objects.requireNonNull(suffix, "suffix");
      if (family.isBlank()) {
        throw new IllegalArgumentException("a person needs a family name");
      }
    }

    /** Particle and family name. */
    public String fullFamily() {
      return particle.isEmpty() ? family : particle + " " + family;
    }

    @Override
    public String line() {
      return fullFamily()
          + (given.isEmpty() ? "" : ", " + given)
          + (suffix.isEmpty() ? "" : ", " + suffix);
    }
  }

  /**
   * A group, or a name that is not taken apart.
   *
   * @param name as printed; never empty
   */
  record Group(String name) implements Author {
    public Group {
      if (name.isBlank()) {
        throw new IllegalArgumentException("a group needs a name");
      }
    }

    @Override
    public String line() {
      return name;
    }
  }
}
