package gapwise.reference.likeness;

/** What two names of persons have in common, the closest first. */
public enum PersonLikeness {
  /** Family name and given names agree, initials standing for given names. */
  SAME,
  /** The same family name; of one the given name is not told. */
  SAME_FAMILY_NAME,
  /** Family and given name stand in each other's place. */
  EXCHANGED,
  /** The family names differ by a slip or by the way they are romanised; initials agree. */
  SPELLED_OTHERWISE,
  /** At least one is in a script whose sound its letters do not tell. */
  NOT_COMPARABLE,
  /** Two persons, or the same family name with other given names. */
  DIFFERENT;

  /** Whether the two names can well be those of one person. */
  public boolean isOnePerson() {
    return this != NOT_COMPARABLE && this != DIFFERENT;
  }

  /** Compares two names. */
  public static PersonLikeness of(PersonName one, PersonName two) {
    String first = one.core();
    String second = two.core();
    if (first.equals(second) || skeletonsAgree(one, two)) {
      return sameFamily(one, two, first.equals(second));
    }
    if (one.isInAnotherScript() != two.isInAnotherScript()) {
      return NOT_COMPARABLE;
    }
    if (isExchanged(one, two) || isExchanged(two, one)) {
      return EXCHANGED;
    }
    boolean initials = initialsAgree(one, two);
    if (initials && areSpelledOtherwise(one, two)) {
      return SPELLED_OTHERWISE;
    }
    // A family name of two parts of which the other record has one.
    if (initials && isPartOf(one.family(), second, two.family(), first)) {
      return SPELLED_OTHERWISE;
    }
    return DIFFERENT;
  }

  private static PersonLikeness sameFamily(PersonName one, PersonName two, boolean toTheLetter) {
    if (one.initials().isEmpty() || two.initials().isEmpty()) {
      return SAME_FAMILY_NAME;
    }
    if (!initialsAgree(one, two)) {
      return one.isInAnotherScript() != two.isInAnotherScript() ? NOT_COMPARABLE : DIFFERENT;
    }
    if (!fullNamesAgree(one, two)) {
      return DIFFERENT;
    }
    return toTheLetter ? SAME : SPELLED_OTHERWISE;
  }

  private static boolean skeletonsAgree(PersonName one, PersonName two) {
    return one.skeleton().length() >= 3 && one.skeleton().equals(two.skeleton());
  }

  /** The initials of one begin those of the other. */
  private static boolean initialsAgree(PersonName one, PersonName two) {
    String first = one.sounds();
    String second = two.sounds();
    return first.startsWith(second) || second.startsWith(first);
  }

  private static boolean fullNamesAgree(PersonName one, PersonName two) {
    if (one.fullGiven().isEmpty() || two.fullGiven().isEmpty()) {
      return true;
    }
    String first = one.fullGiven().get(0);
    String second = two.fullGiven().get(0);
    return first.startsWith(second)
        || second.startsWith(first)
        || isSpelledOtherwise(first, second)
        || String.join("", one.fullGiven()).equals(String.join("", two.fullGiven()));
  }

  private static boolean isExchanged(PersonName one, PersonName two) {
    if (one.given().isBlank() || one.fullGiven().isEmpty()) {
      return false;
    }
    String given = one.givenCore();
    String family = two.core();
    if (given.length() < 3 || !(given.equals(family) || EditDistance.isSlip(given, family))) {
      return false;
    }
    String other = two.initials();
    return !other.isEmpty()
        && PersonName.sound(one.core()).startsWith(two.sounds().substring(0, 1));
  }

  private static boolean areSpelledOtherwise(PersonName one, PersonName two) {
    return EditDistance.isSlip(one.core(), two.core())
        || soundAlike(one.skeleton(), two.skeleton());
  }

  private static boolean isSpelledOtherwise(String first, String second) {
    return EditDistance.isSlip(first, second)
        || soundAlike(Letters.skeleton(first), Letters.skeleton(second));
  }

  private static boolean soundAlike(String one, String two) {
    int shorter = Math.min(one.length(), two.length());
    int allowed = shorter >= 8 ? 2 : 1;
    return shorter >= 4
        && one.charAt(0) == two.charAt(0)
        && EditDistance.between(one, two, allowed) <= allowed;
  }

  private static boolean isPartOf(String one, String secondCore, String two, String firstCore) {
    return hasPart(one, secondCore) || hasPart(two, firstCore);
  }

  private static boolean hasPart(String family, String core) {
    if (core.length() < 3) {
      return false;
    }
    String[] parts = Letters.folded(family).split(" ");
    return parts.length > 1 && (parts[0].equals(core) || parts[parts.length - 1].equals(core));
  }
}
