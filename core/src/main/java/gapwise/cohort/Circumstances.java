package gapwise.cohort;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Where, when, by whom and by what method the patients of two papers were treated. */
final class Circumstances {
  /** How the hospitals lie to each other. */
  enum Hospital {
    SAME,
    LIKE,
    TOWN,
    DIFFERENT,
    UNKNOWN
  }

  private static final CentreName NO_CENTRE =
      new CentreName("", Set.of(), Set.of(), Set.of(), Set.of());

  /** So many counts must fit before the fit of all says anything. */
  private static final int LEAST_COUNTS = 3;

  private final StudyFacts one;
  private final StudyFacts two;
  private final int shared;
  private final boolean method;
  private final boolean groupsFit;
  private final boolean groupsFitWell;
  private final Recruitment.Relation years;
  private Optional<Closest> closest = Optional.empty();

  private record Closest(Hospital relation, CentreName first, CentreName second) {}

  Circumstances(StudyFacts one, StudyFacts two) {
    this.one = one;
    this.two = two;
    shared = one.team().shared(two.team());
    years = one.recruited().to(two.recruited());
    boolean anyMethod = false;
    boolean anyFits = false;
    boolean anyFitsWell = false;
    for (GroupFacts a : one.groups()) {
      for (GroupFacts b : two.groups()) {
        if (a.method().equals(b.method())) {
          anyMethod = true;
          boolean fits = !Conflicts.exclude(one, a, two, b);
          anyFits |= fits;
          anyFitsWell |= fits && !Conflicts.discourage(a, b);
        }
      }
    }
    method = anyMethod;
    groupsFit = anyFits;
    groupsFitWell = anyFitsWell;
  }

  Hospital hospital() {
    return closest().relation();
  }

  private Closest closest() {
    if (closest.isEmpty()) {
      closest = Optional.of(findClosest());
    }
    return closest.get();
  }

  private Closest findClosest() {
    Closest found = new Closest(Hospital.UNKNOWN, NO_CENTRE, NO_CENTRE);
    for (CentreName first : one.centres()) {
      for (CentreName second : two.centres()) {
        Hospital relation = Hospital.valueOf(first.to(second).name());
        if (found.relation() == Hospital.UNKNOWN || relation.compareTo(found.relation()) < 0) {
          found = new Closest(relation, first, second);
        }
      }
    }
    return found;
  }

  Recruitment.Relation years() {
    return years;
  }

  int shared() {
    return shared;
  }

  /** Two authors in common, or most of a short list: more than a common name may do. */
  boolean teamAgrees() {
    int smaller = one.team().smaller(two.team());
    return shared >= 2 && shared >= 0.3 * smaller || shared == 1 && smaller <= 2;
  }

  /** Three quarters of the shorter list of authors, and three at least. */
  boolean teamIsNearlyTheSame() {
    return shared >= 3 && shared >= 0.75 * one.team().smaller(two.team());
  }

  boolean teamsKnown() {
    return one.team().isKnown() && two.team().isKnown();
  }

  boolean methodShared() {
    return method;
  }

  /** Whether somebody can be a patient of both, as far as the numbers say. */
  boolean fit() {
    return method
        && groupsFit
        && years != Recruitment.Relation.APART
        && (countriesFit() || hospital() == Hospital.SAME);
  }

  /** Whether many can be, by ages and lengths. */
  boolean fitWell() {
    return groupsFitWell;
  }

  /** Whether recruitment and every count of a group lie within those of a group of the other. */
  boolean oneFitsIntoTheOther() {
    return one.groups().stream()
        .anyMatch(
            a -> two.groups().stream().anyMatch(b -> a.method().equals(b.method()) && fits(a, b)));
  }

  private boolean fits(GroupFacts a, GroupFacts b) {
    return (inside(a, b) || around(a, b)) && a.numbers().commonCounts(b.numbers()) >= LEAST_COUNTS;
  }

  private boolean inside(GroupFacts a, GroupFacts b) {
    return one.recruited().within(two.recruited()) && a.numbers().fitInto(b.numbers());
  }

  private boolean around(GroupFacts a, GroupFacts b) {
    return two.recruited().within(one.recruited()) && b.numbers().fitInto(a.numbers());
  }

  private boolean countriesFit() {
    return one.country().isEmpty()
        || two.country().isEmpty()
        || one.country().equals(two.country());
  }

  /** What agrees, what speaks against it, what is not given. */
  List<Sign> signs() {
    List<Sign> signs = new ArrayList<>();
    signs.add(hospitalSign());
    signs.add(teamSign());
    signs.add(yearsSign());
    signs.add(methodSign());
    if (hospital() == Hospital.UNKNOWN && !one.country().isEmpty() && !two.country().isEmpty()) {
      signs.add(
          countriesFit()
              ? Sign.agrees(Fact.COUNTRY, say("cohort.country-same"))
              : Sign.against(Fact.COUNTRY, say("cohort.country-differs")));
    }
    signs.addAll(groupSigns());
    return signs;
  }

  private List<Sign> groupSigns() {
    List<Sign> signs = new ArrayList<>();
    for (GroupFacts a : one.groups()) {
      for (GroupFacts b : two.groups()) {
        if (a.method().equals(b.method())) {
          if (!groupsFitWell) {
            signs.addAll(Conflicts.between(one, a, two, b));
          } else {
            size(a, b).ifPresent(signs::add);
          }
        }
      }
    }
    return signs.stream().filter(distinctFacts()).toList();
  }

  private static Predicate<Sign> distinctFacts() {
    Set<Fact> told = EnumSet.noneOf(Fact.class);
    return sign -> told.add(sign.fact());
  }

  private Optional<Sign> size(GroupFacts a, GroupFacts b) {
    if (!fits(a, b)) {
      return Optional.empty();
    }
    boolean inside = inside(a, b);
    return Optional.of(
        Sign.agrees(
            Fact.NUMBERS,
            say(
                "cohort.counts-fit",
                Map.of(
                    "smaller", inside ? one.id() : two.id(),
                    "larger", inside ? two.id() : one.id()))));
  }

  private Sign hospitalSign() {
    Map<String, String> names =
        Map.of("first", closest().first().printed(), "second", closest().second().printed());
    return switch (hospital()) {
      case SAME ->
          Sign.agrees(
              Fact.HOSPITAL,
              one.centres().size() + two.centres().size() > 2
                  ? say("cohort.hospital-among", Map.of("hospital", closest().first().printed()))
                  : say("cohort.hospital-same", Map.of("hospital", closest().first().printed())));
      case LIKE -> Sign.agrees(Fact.HOSPITAL, say("cohort.hospital-like", names));
      case TOWN -> Sign.against(Fact.HOSPITAL, say("cohort.hospital-town", names));
      case DIFFERENT -> Sign.against(Fact.HOSPITAL, say("cohort.hospital-differs", names));
      case UNKNOWN ->
          Sign.unknown(
              Fact.HOSPITAL,
              one.centres().isEmpty() && two.centres().isEmpty()
                  ? say("cohort.hospital-nowhere")
                  : say(
                      "cohort.hospital-unknown",
                      Map.of("study", one.centres().isEmpty() ? one.id() : two.id())));
    };
  }

  private Sign teamSign() {
    if (!teamsKnown()) {
      return Sign.unknown(Fact.TEAM, say("cohort.team-unknown"));
    }
    return shared == 0
        ? Sign.against(Fact.TEAM, say("cohort.team-differs"))
        : Sign.agrees(
            Fact.TEAM,
            say(
                "cohort.team-shared",
                Map.of("shared", shared, "shorter", one.team().smaller(two.team()))));
  }

  private Sign yearsSign() {
    Map<String, String> spans =
        Map.of("first", one.recruitedAsPrinted(), "second", two.recruitedAsPrinted());
    return switch (years()) {
      case OVERLAP -> Sign.agrees(Fact.YEARS, say("cohort.years-overlap", spans));
      case TOUCH -> Sign.unknown(Fact.YEARS, say("cohort.years-touch", spans));
      case APART -> Sign.against(Fact.YEARS, say("cohort.years-apart", spans));
      case UNKNOWN ->
          Sign.unknown(
              Fact.YEARS,
              say(
                  "cohort.years-unknown",
                  Map.of("study", one.recruited().given() ? two.id() : one.id())));
    };
  }

  private Sign methodSign() {
    if (!method) {
      return Sign.against(Fact.METHOD, say("cohort.method-differs"));
    }
    String code =
        one.groups().stream()
            .map(GroupFacts::method)
            .filter(own -> two.groups().stream().anyMatch(g -> g.method().equals(own)))
            .findFirst()
            .orElseThrow();
    String name = Method.vocabulary().find(code).map(Method::shortLabel).orElse(code);
    return Sign.agrees(Fact.METHOD, say("cohort.method-same", Map.of("method", name)));
  }
}
