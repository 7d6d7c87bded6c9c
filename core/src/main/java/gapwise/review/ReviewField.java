package gapwise.review;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Shown;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The fields of a review in the order in which people read them, each as text. */
public enum ReviewField {
  TITLE("Title", false, Review::title),
  REGISTRATION("Registration", false, Review::registration),
  POPULATION("Population", true, Review::population),
  INTERVENTIONS("Interventions", true, review -> methods(review.interventions())),
  COMPARATORS("Comparators", true, review -> methods(review.comparators())),
  OUTCOMES("Outcomes", true, review -> lines(review.outcomes().stream().map(ReviewOutcome::words))),
  INCLUDE("A study is taken if", true, review -> lines(review.include().stream())),
  EXCLUDE("A study is left out if", true, review -> lines(review.exclude().stream())),
  DESIGNS("Designs", true, review -> lines(review.limits().designs().stream().map(Design::label))),
  LENGTHS("Missing bone", true, review -> lengths(review.limits())),
  YEARS("Years of publication", true, review -> years(review.limits())),
  LANGUAGES("Languages", true, review -> review.limits().languages()),
  PEOPLE(
      "Who does what", false, review -> lines(review.people().stream().map(ReviewPerson::words)));

  private final String label;
  private final boolean ofProtocol;
  private final Function<Review, String> words;

  ReviewField(String label, boolean ofProtocol, Function<Review, String> words) {
    this.label = label;
    this.ofProtocol = ofProtocol;
    this.words = words;
  }

  /** Its name. */
  public String label() {
    return label;
  }

  /** Whether a change of it after work has begun is an amendment of the protocol. */
  public boolean isOfProtocol() {
    return ofProtocol;
  }

  /** What a review says of it, lists one a line; empty where nothing is said. */
  public String of(Review review) {
    return words.apply(review);
  }

  private static String methods(List<String> codes) {
    return lines(
        codes.stream().map(code -> Method.vocabulary().find(code).map(Method::label).orElse(code)));
  }

  private static String lines(Stream<String> all) {
    return all.collect(Collectors.joining("\n"));
  }

  private static String lengths(ReviewLimits limits) {
    Map<String, Object> places = new HashMap<>();
    limits.lengthFromCentimetres().ifPresent(from -> places.put("from", Shown.centimetres(from)));
    limits.lengthToCentimetres().ifPresent(to -> places.put("to", Shown.centimetres(to)));
    if (places.size() == 2) {
      return say("review.lengths", places);
    }
    return places.isEmpty()
        ? ""
        : places.containsKey("from")
            ? say("review.lengths-from", places)
            : say("review.lengths-to", places);
  }

  private static String years(ReviewLimits limits) {
    Map<String, Object> places = new HashMap<>();
    limits.yearFrom().ifPresent(from -> places.put("from", Integer.toString(from)));
    limits.yearTo().ifPresent(to -> places.put("to", Integer.toString(to)));
    if (places.size() == 2) {
      return say("review.years", places);
    }
    return places.isEmpty()
        ? ""
        : places.containsKey("from")
            ? say("review.years-from", places)
            : say("review.years-to", places);
  }
}
