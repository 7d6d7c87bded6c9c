package gapwise.cohort;

import gapwise.reference.likeness.Letters;
import gapwise.reference.likeness.PersonLikeness;
import gapwise.reference.likeness.PersonName;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * An author as a list of authors names them.
 *
 * @param name the name
 * @param skeleton what the spellings of the family name have in common
 */
record Author(PersonName name, String skeleton) {

  /** Reads "Family AB; Other C", "Family, A. B.; Other, C." or "A. B. Family, C. Other". */
  static List<Author> listed(String authors) {
    String[] names =
        authors.contains(";")
            ? authors.split(";")
            : authors.replaceAll("(?i)\\s+(and|&)\\s+", ",").split(",");
    List<Author> people = new ArrayList<>();
    for (String name : names) {
      boolean others = name.strip().toLowerCase(Locale.ROOT).startsWith("et al");
      if (!name.isBlank() && !others) {
        people.add(of(name));
      }
    }
    return people;
  }

  static Author of(String printed) {
    PersonName name =
        PersonName.of(printed.strip().replaceFirst("(?i)[\\s,]+(jr|sr|ii|iii|iv)\\.?$", ""));
    return new Author(name, Letters.skeleton(name.core()));
  }

  /**
   * A first author whose family name stands alone, whatever its number of words, as in "van den
   * Berg".
   */
  static Author ofFamilyName(String family) {
    PersonName name = new PersonName(family.strip(), "");
    return new Author(name, Letters.skeleton(name.core()));
  }

  /** The same family name however it is spelt, and given names that do not say another person. */
  boolean maybe(Author other) {
    return skeleton.equals(other.skeleton)
        && !skeleton.isEmpty()
        && (name.equals(other.name) || PersonLikeness.of(name, other.name).isOnePerson());
  }
}
