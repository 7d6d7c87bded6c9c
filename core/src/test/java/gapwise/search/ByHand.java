package gapwise.search;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Detail;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.BiPredicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Answers requests without text by looking at every arm, to hold the index against. */
final class ByHand {
  private static final List<String> FILTERS =
      List.of("methods", "bones", "segments", "infected", "designs", "risks", "outcomes");

  private static final String DETAILS = "details";

  private final List<Study> studies;
  private final Map<String, Set<String>> known = new TreeMap<>();

  ByHand(List<Study> studies) {
    this.studies = studies;
  }

  List<String> arms(SearchRequest request) {
    List<String> found = new ArrayList<>();
    each(
        (study, arm) ->
            inYearsAndLength(request, study, arm) && failed(request, study, arm).isEmpty(),
        (study, arm) -> found.add(study.id() + " " + arm.id()));
    return found;
  }

  /** Beside each filter, the arms of each value that fail no other filter. */
  Map<String, Map<String, Integer>> facets(SearchRequest request) {
    return counted(request, (study, arm) -> study.id() + " " + arm.id());
  }

  /** Beside each filter, the studies of those arms. */
  Map<String, Map<String, Integer>> studiesOfFacets(SearchRequest request) {
    return counted(request, (study, arm) -> study.id());
  }

  private Map<String, Map<String, Integer>> counted(
      SearchRequest request, BiFunction<Study, Arm, String> what) {
    Map<String, Map<String, Integer>> facets = new TreeMap<>();
    for (String filter : FILTERS) {
      facets.put(filter, counted(filter, request, what, word -> word));
    }
    facets.put(DETAILS, new TreeMap<>());
    for (String detail : InventedStudies.DETAILS) {
      facets
          .get(DETAILS)
          .putAll(
              counted(
                  DETAILS + " " + detail,
                  request,
                  what,
                  word -> detail + ":" + word.replace(" ", "-")));
    }
    return facets;
  }

  private Map<String, Integer> counted(
      String filter,
      SearchRequest request,
      BiFunction<Study, Arm, String> what,
      UnaryOperator<String> code) {
    Map<String, Set<String>> met = new TreeMap<>();
    each(
        (study, arm) -> passesWithout(filter, request, study, arm),
        (study, arm) ->
            codes(filter, study, arm)
                .forEach(
                    word ->
                        met.computeIfAbsent(code.apply(word), one -> new HashSet<>())
                            .add(what.apply(study, arm))));
    Map<String, Integer> counts = new TreeMap<>();
    met.forEach((word, found) -> counts.put(word, found.size()));
    return counts;
  }

  /** Of each filter, the arms that there would be without it. */
  Map<String, Integer> without(SearchRequest request) {
    Map<String, Integer> without = new TreeMap<>();
    for (String filter : FILTERS) {
      without.put(filter, 0);
      each(
          (study, arm) -> passesWithout(filter, request, study, arm),
          (study, arm) -> without.merge(filter, 1, Integer::sum));
    }
    without.put(DETAILS, 0);
    each(
        (study, arm) ->
            passesWithout("no filter", request, study, arm)
                || InventedStudies.DETAILS.stream()
                    .anyMatch(one -> passesWithout(DETAILS + " " + one, request, study, arm)),
        (study, arm) -> without.merge(DETAILS, 1, Integer::sum));
    return without;
  }

  private boolean passesWithout(String filter, SearchRequest request, Study study, Arm arm) {
    Set<String> failed = failed(request, study, arm);
    failed.remove(filter);
    return inYearsAndLength(request, study, arm) && failed.isEmpty();
  }

  long patients(SearchRequest request) {
    long[] sum = {0};
    Set<String> found = new HashSet<>(arms(request));
    each(
        (study, arm) -> found.contains(study.id() + " " + arm.id()),
        (study, arm) -> {
          sum[0] += patients(request, study, arm).orElse(0);
        });
    return sum[0];
  }

  /** Only those in the range of an arm that its patients tell of, one by one. */
  private static OptionalInt patients(SearchRequest request, Study study, Arm arm) {
    boolean ranged =
        request.defect().isPresent()
            && (request.defectMatch() == SearchRequest.DefectMatch.OVERLAP
                || request.defectMatch() == SearchRequest.DefectMatch.CENTRE);
    List<Double> lengths =
        study.patientsOf(arm.id()).stream()
            .flatMap(p -> p.defect().stream())
            .map(length -> length.centimetres())
            .toList();
    Optional<DefectLength> own = arm.baseline().defect();
    boolean noStretch = own.isEmpty() || own.get().closedRange().isEmpty();
    boolean each = lengths.size() >= arm.baseline().patients().orElse(Integer.MAX_VALUE);
    if (ranged && !lengths.isEmpty() && (noStretch || each)) {
      LengthRange range = request.defect().get();
      return OptionalInt.of((int) lengths.stream().filter(range::contains).count());
    }
    return patients(study, arm);
  }

  private static OptionalInt patients(Study study, Arm arm) {
    int described = study.patientsOf(arm.id()).size();
    if (arm.baseline().patients().isPresent()) {
      return arm.baseline().patients();
    }
    if (described > 0) {
      return OptionalInt.of(described);
    }
    return study.arms().size() == 1 ? study.whole().patients() : OptionalInt.empty();
  }

  /** The arms found as the index should know them, in words and sorted. */
  List<String> glances(SearchRequest request) {
    Set<String> found = new HashSet<>(arms(request));
    List<String> glances = new ArrayList<>();
    each(
        (study, arm) -> found.contains(study.id() + " " + arm.id()),
        (study, arm) ->
            glances.add(
                new IndexedArm(
                        study.id(),
                        arm.method().principal().code(),
                        study.design(),
                        infected(study, arm).stream().map(ByHand::answer).findFirst(),
                        centre(study, arm),
                        patients(request, study, arm),
                        study.reportKind() == ReportKind.RETRACTION
                            ? Optional.of("retracted")
                            : arm.keptApart().map(kept -> kept.reason().label()))
                    .toString()));
    return glances.stream().sorted().toList();
  }

  private void each(BiPredicate<Study, Arm> test, java.util.function.BiConsumer<Study, Arm> then) {
    for (Study study : studies) {
      for (Arm arm : study.arms()) {
        if (test.test(study, arm)) {
          then.accept(study, arm);
        }
      }
    }
  }

  private static OptionalDouble centre(Study study, Arm arm) {
    return ArmDefect.of(study, arm)
        .map(defect -> defect.length().centreCentimetres())
        .orElse(OptionalDouble.empty());
  }

  /** Not a number where no follow-up is known. The invented follow-ups are in years or months. */
  private static double months(Study study, Arm arm) {
    List<Double> patients =
        study.patientsOf(arm.id()).stream()
            .flatMap(p -> p.followUp().stream())
            .map(time -> time.unit() == Unit.YEARS ? 12 * time.value() : time.value())
            .toList();
    if (arm.baseline().followUp().isEmpty() && !patients.isEmpty()) {
      return patients.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }
    Optional<QuantitySummary> followUp =
        arm.baseline().followUp().or(() -> study.whole().followUp());
    if (followUp.isEmpty()) {
      return Double.NaN;
    }
    QuantitySummary s = followUp.get();
    OptionalDouble value =
        s.mean().isPresent() ? s.mean() : s.median().isPresent() ? s.median() : s.minimum();
    return value.orElse(Double.NaN) * (s.unit() == Unit.YEARS ? 12 : 1);
  }

  private static boolean inYearsAndLength(SearchRequest request, Study study, Arm arm) {
    boolean yearsAsked = request.years().from().isPresent() || request.years().to().isPresent();
    if (yearsAsked && study.citation().year().isEmpty()) {
      return false;
    }
    int year = study.citation().year().orElse(0);
    if (yearsAsked
        && (year < request.years().from().orElse(year)
            || year > request.years().to().orElse(year))) {
      return false;
    }
    if (request.followUpFrom().isPresent()
        && !(months(study, arm) >= request.followUpFrom().getAsDouble())) {
      return false;
    }
    if (request.defectMatch() == SearchRequest.DefectMatch.NO_CENTRE) {
      return centre(study, arm).isEmpty();
    }
    if (request.defectMatch() == SearchRequest.DefectMatch.ONE_SIDED
        || request.defectMatch() == SearchRequest.DefectMatch.UNKNOWN) {
      boolean oneSided = request.defectMatch() == SearchRequest.DefectMatch.ONE_SIDED;
      Optional<ArmDefect> defect = ArmDefect.of(study, arm);
      boolean hasOneEnd =
          defect
              .filter(d -> d.origin() != ArmDefect.Origin.FROM_PATIENTS)
              .flatMap(d -> d.length().oneSidedRange())
              .isPresent();
      return oneSided == hasOneEnd && notSaid(request, defect);
    }
    if (request.defect().isEmpty()) {
      return true;
    }
    return ArmDefect.of(study, arm)
        .filter(
            defect ->
                request.defectMatch() == SearchRequest.DefectMatch.CENTRE
                    ? defect.centreLiesIn(request.defect().get())
                    : defect.overlaps(request.defect().get()))
        .isPresent();
  }

  private static boolean notSaid(SearchRequest request, Optional<ArmDefect> defect) {
    if (defect.isEmpty()) {
      return true;
    }
    if (request.defect().isPresent()) {
      return defect.get().leavesOpen(request.defect().get());
    }
    boolean patients = defect.get().origin() == ArmDefect.Origin.FROM_PATIENTS;
    boolean closed = defect.get().length().closedRange().isPresent();
    return !patients && (!closed || defect.get().length().oneSidedRange().isPresent());
  }

  private Set<String> failed(SearchRequest request, Study study, Arm arm) {
    Map<String, Set<String>> asked = new TreeMap<>();
    asked.put("methods", request.methods());
    asked.put("bones", request.bones().stream().map(Bone::code).collect(Collectors.toSet()));
    asked.put("segments", request.segments());
    asked.put(
        "infected", request.infected().stream().map(YesOrNo::code).collect(Collectors.toSet()));
    asked.put("designs", request.designs().stream().map(d -> d.code()).collect(Collectors.toSet()));
    asked.put("risks", request.risks().stream().map(r -> r.code()).collect(Collectors.toSet()));
    asked.put("outcomes", request.outcomes());
    for (MethodDetail detail : request.details()) {
      asked
          .computeIfAbsent(DETAILS + " " + detail.kind().code(), kind -> new HashSet<>())
          .add(detail.word());
    }
    Set<String> failed = new HashSet<>();
    asked.forEach(
        (filter, codes) -> {
          if (!codes.isEmpty() && codes(filter, study, arm).stream().noneMatch(codes::contains)) {
            failed.add(filter);
          }
        });
    return failed;
  }

  private Set<String> codes(String filter, Study study, Arm arm) {
    String key = filter + " " + study.id() + " " + arm.id();
    return known.computeIfAbsent(key, k -> read(filter, study, arm));
  }

  private static Set<String> read(String filter, Study study, Arm arm) {
    if (filter.startsWith(DETAILS)) {
      Detail detail = arm.details().get(filter.substring(DETAILS.length() + 1));
      return detail == null ? Set.of() : Set.of(detail.words());
    }
    return switch (filter) {
      case "methods" -> Set.of(arm.method().principal().code());
      case "bones" -> bones(study, arm);
      case "segments" -> segments(study, arm);
      case "infected" -> infected(study, arm);
      case "designs" -> study.design().stream().map(d -> d.code()).collect(Collectors.toSet());
      case "risks" ->
          study.appraisals().isEmpty()
              ? Set.of("not-rated")
              : Set.of(study.appraisals().get(0).overall().orElseThrow().judgement());
      default -> outcomes(study, arm);
    };
  }

  private static Set<String> bones(Study study, Arm arm) {
    Set<String> own =
        Stream.concat(
                arm.baseline().bones().stream()
                    .filter(b -> b.count().orElse(1) > 0)
                    .map(b -> b.bone().code()),
                study.patientsOf(arm.id()).stream().flatMap(p -> p.bone().stream()).map(Bone::code))
            .collect(Collectors.toSet());
    return !own.isEmpty()
        ? own
        : study.whole().bones().stream()
            .filter(b -> b.count().orElse(1) > 0)
            .map(b -> b.bone().code())
            .collect(Collectors.toSet());
  }

  private static Set<String> segments(Study study, Arm arm) {
    Set<String> own = new HashSet<>(arm.baseline().segments());
    study.patientsOf(arm.id()).forEach(p -> p.segment().ifPresent(own::add));
    return own.isEmpty() ? new HashSet<>(study.whole().segments()) : own;
  }

  private static YesOrNo answer(String code) {
    return Stream.of(YesOrNo.values()).filter(a -> a.code().equals(code)).findFirst().orElseThrow();
  }

  private static Set<String> infected(Study study, Arm arm) {
    if (arm.baseline().infectedAtStart().isPresent()) {
      return Set.of(arm.baseline().infectedAtStart().get().code());
    }
    List<YesOrNo> said =
        study.patientsOf(arm.id()).stream().flatMap(p -> p.infected().stream()).toList();
    if (said.isEmpty()) {
      return study.whole().infectedAtStart().map(a -> Set.of(a.code())).orElse(Set.of());
    }
    if (said.contains(YesOrNo.MIXED) || said.containsAll(List.of(YesOrNo.YES, YesOrNo.NO))) {
      return Set.of("mixed");
    }
    return Set.of(said.contains(YesOrNo.UNCLEAR) ? "unclear" : said.get(0).code());
  }

  private static Set<String> outcomes(Study study, Arm arm) {
    Set<String> codes =
        study.outcomes().stream()
            .filter(
                r -> r.scope() instanceof Scope.AllArms || r.scope().armIds().contains(arm.id()))
            .map(r -> r.outcome().code())
            .collect(Collectors.toSet());
    study.patientsOf(arm.id()).forEach(p -> codes.addAll(p.outcomes().keySet()));
    Map<String, String> twoSides =
        Map.of(
            "union", "nonunion",
            "nonunion", "union",
            "flap-loss", "flap-survival",
            "flap-survival", "flap-loss");
    List.copyOf(codes).forEach(code -> codes.add(twoSides.getOrDefault(code, code)));
    return codes;
  }
}
