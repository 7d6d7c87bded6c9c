package gapwise.cohort;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

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
      new CentreName("", Set.of(), Set.of(), Set.of());

  private record Pair(CentreName first, CentreName second) {}

  private final StudyFacts one;
  private final StudyFacts two;
  private final Hospital hospital;
  private final Pair centres;
  private final int shared;
  private final boolean method;
  private final boolean groupsFit;
  private final List<Sign> conflicts = new ArrayList<>();
  private final List<Sign> sizes = new ArrayList<>();

  Circumstances(StudyFacts one, StudyFacts two) {
    this.one = one;
    this.two = two;
    Hospital closest = Hospital.UNKNOWN;
    Pair pair = new Pair(NO_CENTRE, NO_CENTRE);
    for (CentreName first : one.centres()) {
      for (CentreName second : two.centres()) {
        Hospital relation = Hospital.valueOf(first.to(second).name());
        if (closest == Hospital.UNKNOWN || relation.compareTo(closest) < 0) {
          closest = relation;
          pair = new Pair(first, second);
        }
      }
    }
    hospital = closest;
    centres = pair;
    shared = one.team().shared(two.team());
    boolean anyMethod = false;
    boolean anyFits = false;
    for (GroupFacts a : one.groups()) {
      for (GroupFacts b : two.groups()) {
        if (a.method().equals(b.method())) {
          anyMethod = true;
          List<Sign> against = Conflicts.between(one, a, two, b);
          anyFits |= against.isEmpty();
          conflicts.addAll(against);
          tellSize(a, b);
        }
      }
    }
    method = anyMethod;
    groupsFit = anyFits;
  }

  private void tellSize(GroupFacts a, GroupFacts b) {
    boolean inside = one.recruited().within(two.recruited()) && a.numbers().fitInto(b.numbers());
    boolean around = two.recruited().within(one.recruited()) && b.numbers().fitInto(a.numbers());
    if ((inside || around) && a.numbers().commonCounts(b.numbers()) >= 3 && sizes.isEmpty()) {
      sizes.add(
          Sign.agrees(
              Fact.NUMBERS,
              say(
                  "cohort.counts-fit",
                  Map.of("smaller", inside ? one.id() : two.id(), "larger", inside ? two.id() : one.id()))));
    }
  }

  Hospital hospital() {
    return hospital;
  }

  Recruitment.Relation years() {
    return one.recruited().to(two.recruited());
  }

  int shared() {
    return shared;
  }

  boolean teamsKnown() {
    return one.team().isKnown() && two.team().isKnown();
  }

  /** Whether somebody can be a patient of both, as far as the numbers say. */
  boolean fit() {
    return method
        && groupsFit
        && years() != Recruitment.Relation.APART
        && (countriesFit() || hospital == Hospital.SAME);
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
    if (hospital == Hospital.UNKNOWN && !one.country().isEmpty() && !two.country().isEmpty()) {
      signs.add(
          countriesFit()
              ? Sign.agrees(Fact.COUNTRY, say("cohort.country-same"))
              : Sign.against(Fact.COUNTRY, say("cohort.country-differs")));
    }
    if (groupsFit) {
      signs.addAll(sizes);
    } else {
      signs.addAll(conflicts);
    }
    return signs;
  }

  private Sign hospitalSign() {
    Map<String, String> names =
        Map.of("first", centres.first().printed(), "second", centres.second().printed());
    return switch (hospital) {
      case SAME ->
          Sign.agrees(
              Fact.HOSPITAL,
              one.centres().size() + two.centres().size() > 2
                  ? say("cohort.hospital-among", Map.of("hospital", centres.first().printed()))
                  : say("cohort.hospital-same", Map.of("hospital", centres.first().printed())));
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
    Map<String, String> years =
        Map.of("first", one.recruitedAsPrinted(), "second", two.recruitedAsPrinted());
    return switch (years()) {
      case OVERLAP -> Sign.agrees(Fact.YEARS, say("cohort.years-overlap", years));
      case TOUCH -> Sign.unknown(Fact.YEARS, say("cohort.years-touch", years));
      case APART -> Sign.against(Fact.YEARS, say("cohort.years-apart", years));
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
    String shared =
        one.groups().stream()
            .map(GroupFacts::method)
            .filter(code -> two.groups().stream().anyMatch(g -> g.method().equals(code)))
            .findFirst()
            .orElseThrow();
    String name =
        Objects.requireNonNull(
            Method.vocabulary().find(shared).map(Method::shortLabel).orElse(shared), "method");
    return Sign.agrees(Fact.METHOD, say("cohort.method-same", Map.of("method", name)));
  }
}
