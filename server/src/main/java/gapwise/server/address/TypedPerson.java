package gapwise.server.address;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Takes what words in the box say of a patient into an address of options: an age, smoking,
 * diabetes. Words that only name the matter go; what is left stays in the box.
 */
final class TypedPerson {
  private static final Pattern AGE =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}.])(?:aged? )?(\\d{1,3})(?:[ -]?(?:years?|yrs?|y/?o)?[ -]?(?:old)?)(?![\\p{L}\\p{N}.])",
          Pattern.CASE_INSENSITIVE);

  private static final int OLDEST = 110;

  private static final Set<String> SMOKING = Set.of("smoker", "smokers", "smokes", "smoking");
  private static final Set<String> DIABETES = Set.of("diabetes", "diabetic", "diabetics");

  /** Words of nearly every such question, which tell no group from another. */
  private static final Set<String> OF_THE_MATTER =
      Set.of(
          "gap",
          "gaps",
          "defect",
          "defects",
          "bone",
          "loss",
          "missing",
          "segmental",
          "patient",
          "man",
          "woman",
          "male",
          "female",
          "options",
          "option",
          "best",
          "treatment",
          "a",
          "an",
          "with",
          "and",
          "or",
          "who",
          "is",
          "old",
          "years",
          "year");

  private TypedPerson() {}

  /** The address with what its box says of a patient taken out of the box. */
  static Address understood(Address words) {
    String text = words.first(TypedWords.BOX);
    Address taken = words;
    Matcher age = AGE.matcher(text);
    if (age.find() && Integer.parseInt(age.group(1)) <= OLDEST) {
      taken = taken.with(OptionAddress.AGE, age.group(1));
      text = text.substring(0, age.start()) + " " + text.substring(age.end());
    }
    List<String> rest = new ArrayList<>();
    for (String word : text.split("[\\s,;:?!]+")) {
      String plain = word.toLowerCase(Locale.ROOT);
      if (SMOKING.contains(plain)) {
        taken = taken.with(OptionAddress.SMOKER, "yes");
      } else if (DIABETES.contains(plain)) {
        taken = taken.with(OptionAddress.DIABETES, "yes");
      } else if (!OF_THE_MATTER.contains(plain)) {
        rest.add(word);
      }
    }
    return chosenNow(taken.with(TypedWords.BOX, String.join(" ", rest)));
  }

  /**
   * Among ways to choose from, "amputation" is the one at the start, not one told apart by none.
   */
  private static Address chosenNow(Address address) {
    boolean untold = address.has("method", "amputation");
    boolean said = address.has("method", "primary-amputation");
    Address others = untold ? address.without("method", "amputation") : address;
    return untold && !said ? others.and("method", "primary-amputation") : others;
  }
}
