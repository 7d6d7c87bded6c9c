package gapwise.server.address;

import gapwise.decision.option.Aspect;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.situation.Situation;
import gapwise.decision.situation.SoftTissue;
import gapwise.decision.situation.Taken;
import gapwise.decision.situation.Wish;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Reads what is asked of options from an address: the filters, of which missing bone, bone, segment
 * and infection are those of the patient; {@code soft-tissue}, {@code age} (years), {@code smoker},
 * {@code diabetes}, {@code wish} (first things first), {@code taken} (which groups the numbers are
 * from), {@code aspect} (what is asked of each option), {@code counted-ASPECT} (an outcome) and
 * {@code matters-ASPECT} (a difference: of 100, or in the unit of the outcome). Nothing identifies
 * a person.
 */
public final class OptionAddress {
  public static final String SOFT_TISSUE = "soft-tissue";
  public static final String AGE = "age";
  public static final String SMOKER = "smoker";
  public static final String DIABETES = "diabetes";
  public static final String WISH = "wish";
  public static final String TAKEN = "taken";
  public static final String ASPECT = "aspect";

  /** How names of ways of counting begin. */
  public static final String COUNTED = "counted-";

  /** How names of differences that matter begin. */
  public static final String MATTERS = "matters-";

  private static final double HUNDRED = 100;

  private final Address address;
  private final Problems problems = new Problems();

  private OptionAddress(Address address) {
    this.address = address;
  }

  /** The name of the way in which an aspect is counted. */
  public static String counted(Aspect aspect) {
    return COUNTED + aspect.code();
  }

  /** The name of the difference that would matter of an aspect. */
  public static String matters(Aspect aspect) {
    return MATTERS + aspect.code();
  }

  /** Whether an address says anything of a patient, of methods, or of what is asked of them. */
  public static boolean asks(Address address) {
    return !address.parameters().isEmpty();
  }

  /**
   * What is asked.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  public static OptionQuestion question(Address address) {
    return new OptionAddress(address).read();
  }

  private OptionQuestion read() {
    SearchRequest all = Filters.read(address);
    Situation situation =
        new Situation(
            among(all),
            all.defect(),
            bones(all),
            all.segments(),
            one("infected", YesOrNo.class),
            one(SOFT_TISSUE, SoftTissue.class),
            age(),
            one(SMOKER, YesOrNo.class),
            one(DIABETES, YesOrNo.class),
            several(WISH, Wish.class));
    List<Aspect> aspects = several(ASPECT, Aspect.class);
    OptionQuestion question =
        new OptionQuestion(
            situation,
            one(TAKEN, Taken.class).orElse(Taken.LENGTH),
            aspects.isEmpty()
                ? List.of(Aspect.values())
                : List.of(Aspect.values()).stream().filter(aspects::contains).toList(),
            counted(situation),
            matters(),
            one(QuestionAddress.STATUS, ExtractionStatus.class));
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return question;
  }

  /** The bone; where only its part is named, in the AO/OTA code, the bone of that part. */
  private static Set<Bone> bones(SearchRequest all) {
    if (!all.bones().isEmpty()) {
      return all.bones();
    }
    Set<Bone> bones = EnumSet.noneOf(Bone.class);
    for (String segment : all.segments()) {
      if (segment.startsWith("3")) {
        bones.add(Bone.FEMUR);
      } else if (segment.startsWith("4")) {
        bones.add(Bone.TIBIA);
      }
    }
    return bones;
  }

  /** The groups that are asked about, apart from what is of the patient. */
  private static SearchRequest among(SearchRequest all) {
    return new SearchRequest(
        all.text(),
        all.methods(),
        Set.of(),
        Set.of(),
        Set.of(),
        all.made(),
        Set.of(),
        all.details(),
        all.years(),
        Optional.empty(),
        DefectMatch.OVERLAP,
        all.followUpFrom());
  }

  private <E extends Enum<E> & Coded> Optional<E> one(String name, Class<E> vocabulary) {
    List<E> found = several(name, vocabulary);
    if (found.size() > 1) {
      problems.add(name, "too-many-values", "expected one of '" + name + "', found several");
    }
    return found.stream().findFirst();
  }

  private <E extends Enum<E> & Coded> List<E> several(String name, Class<E> vocabulary) {
    List<E> found = new ArrayList<>();
    for (String code : address.all(name)) {
      Coded.parse(vocabulary, code)
          .ifPresentOrElse(
              found::add,
              () ->
                  problems.add(
                      name,
                      "unknown-code",
                      "'" + code + "'; " + Nearest.expected(code, Coded.codes(vocabulary))));
    }
    return found.stream().distinct().toList();
  }

  private OptionalInt age() {
    String text = address.first(AGE);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (text.matches("\\d{1,3}") && Integer.parseInt(text) <= 110) {
      return OptionalInt.of(Integer.parseInt(text));
    }
    problems.add(AGE, "not-an-age", "'" + text + "' is not an age; expected years from 0 to 110");
    return OptionalInt.empty();
  }

  private Map<Aspect, Outcome> counted(Situation situation) {
    Map<Aspect, Outcome> counted = new EnumMap<>(Aspect.class);
    for (Aspect aspect : Aspect.values()) {
      String code = address.first(counted(aspect));
      List<Outcome> ways = aspect.outcomes(situation.infected());
      if (!code.isEmpty()) {
        ways.stream()
            .filter(way -> way.code().equals(code))
            .findFirst()
            .ifPresentOrElse(
                way -> counted.put(aspect, way),
                () ->
                    problems.add(
                        counted(aspect),
                        "unknown-code",
                        "'"
                            + code
                            + "'; "
                            + Nearest.expected(code, ways.stream().map(Outcome::code).toList())));
      }
    }
    return counted;
  }

  private Map<Aspect, Double> matters() {
    Map<Aspect, Double> matters = new EnumMap<>(Aspect.class);
    for (Aspect aspect : Aspect.values()) {
      String text = address.first(matters(aspect));
      if (text.isEmpty()) {
        continue;
      }
      double number =
          text.matches("\\d{1,5}([.,]\\d{1,2})?") ? Double.parseDouble(text.replace(',', '.')) : 0;
      boolean share = aspect.outcomes(Optional.empty()).get(0).isEvent();
      if (number > 0 && (!share || number < HUNDRED)) {
        matters.put(aspect, share ? number / HUNDRED : number);
      } else {
        problems.add(
            matters(aspect),
            "not-a-difference",
            "'"
                + text
                + "' is not a difference; expected "
                + (share ? "how many of 100, such as 10" : "a number above 0, such as 2"));
      }
    }
    return matters;
  }
}
