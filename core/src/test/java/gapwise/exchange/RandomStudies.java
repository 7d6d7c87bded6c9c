package gapwise.exchange;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Detail;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PageBox;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Provenance;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.Reading;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.Subgroup;
import gapwise.evidence.TestOfMeans;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Day;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Money;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.CurveShows;
import gapwise.evidence.vocabulary.DefectStage;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodPart;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Phase;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.Sex;
import gapwise.evidence.vocabulary.Standing;
import gapwise.evidence.vocabulary.Vocabulary;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.exchange.form.NumberForm;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Studies with every field filled at some time, from a seed, for tests of reading and writing. The
 * numbers mean nothing; many are such that a spreadsheet or a separator could damage them.
 */
public final class RandomStudies {
  private static final List<String> AWKWARD =
      List.of(
          "plain words",
          "=1+1",
          "-",
          "NR",
          "'quoted",
          "'=x",
          "+5 cm",
          "@home",
          "# remark",
          "semi; colon",
          "\"quote\" inside",
          "comma, \"both\"; three",
          "two\nlines",
          "größer ≥ 5 µm ± 2",
          "3-5",
          "1/2",
          "TRUE",
          "007",
          "1e5",
          "n/a",
          "骨");

  private final Random random;

  public RandomStudies(long seed) {
    random = new Random(seed);
  }

  public List<Study> some(int count) {
    return IntStream.range(0, count).mapToObj(number -> study("study-" + number)).toList();
  }

  private Study study(String id) {
    Citation.Builder citation = Citation.with(words());
    maybe(this::words).ifPresent(citation::authors);
    maybe(this::words).ifPresent(citation::firstAuthor);
    maybe(() -> 1950 + random.nextInt(80)).ifPresent(citation::year);
    maybe(this::words).ifPresent(citation::journal);
    maybe(this::words).ifPresent(citation::volume);
    maybe(this::words).ifPresent(citation::issue);
    maybe(this::words).ifPresent(citation::pages);
    maybe(this::words).ifPresent(citation::doi);
    maybe(this::words).ifPresent(citation::pmid);
    maybe(this::words).ifPresent(citation::register);
    citation.otherSpellings(list(this::words));
    StudyBuilder study = Study.with(id, citation.build());
    maybe(() -> oneOf(ReportKind.values())).ifPresent(study::reportKind);
    maybe(() -> oneOf(Design.values())).ifPresent(study::design);
    maybe(this::words).ifPresent(study::designWords);
    study.centres(list(this::words));
    maybe(this::words).ifPresent(study::country);
    maybe(this::words).ifPresent(study::setting);
    maybe(this::date).ifPresent(study::recruitmentFrom);
    maybe(this::date).ifPresent(study::recruitmentTo);
    maybe(() -> oneOf(YesOrNo.values())).ifPresent(study::consecutive);
    maybe(() -> oneOf(YesOrNo.values())).ifPresent(study::assessorIndependent);
    maybe(this::words).ifPresent(study::funding);
    maybe(this::words).ifPresent(study::unionDefinition);
    maybe(this::words).ifPresent(study::infectionDefinition);
    maybe(this::words).ifPresent(study::cohort);
    study.sameStudyAs(list(this::words));
    study.invented(random.nextBoolean());
    maybe(() -> oneOf(ExtractionStatus.values())).ifPresent(study::status);
    study.provenance(provenance());
    maybe(this::words).ifPresent(study::note);
    List<Arm> arms =
        IntStream.range(0, 1 + random.nextInt(3)).mapToObj(n -> arm("arm " + n)).toList();
    study.arms(arms);
    if (random.nextBoolean()) {
      study.whole(baseline());
      study.wholeAt(provenance(), new TreeMap<>(), maybe(this::words));
    }
    study.outcomes(IntStream.range(0, random.nextInt(12)).mapToObj(n -> outcome(arms)).toList());
    study.patients(
        IntStream.range(0, random.nextInt(5)).mapToObj(n -> patient("case " + n, arms)).toList());
    study.appraisals(appraisals());
    study.curves(arms.stream().filter(arm -> random.nextBoolean()).map(this::curve).toList());
    Study complete = study.build();
    // A reason stands only where there is no value.
    return complete
        .but()
        .missing(reasons(StudySheet.SHEET, StudySheet.write(complete)))
        .arms(complete.arms().stream().map(arm -> withReasons(complete, arm)).toList())
        .build();
  }

  private PublishedCurve curve(Arm arm) {
    List<PublishedCurve.Point> points = new ArrayList<>(List.of(curvePoint()));
    points.addAll(list(this::curvePoint));
    points.addAll(list(() -> new PublishedCurve.Point(points.get(0).time(), tenths(30))));
    List<Double> times = list(this::number).stream().distinct().toList();
    return new PublishedCurve(
        arm.id(),
        oneOf(Outcome.vocabulary()),
        oneOf(Unit.DAYS, Unit.WEEKS, Unit.MONTHS, Unit.YEARS),
        oneOf(CurveShows.values()),
        points,
        times.stream().map(time -> new PublishedCurve.AtRisk(time, count())).toList(),
        times.stream().limit(1).map(t -> new PublishedCurve.LastSeen(t, 1 + count())).toList(),
        new PublishedCurve.Totals(
            optional(maybe(() -> 1 + count())),
            optional(maybe(this::count)),
            optionalNumber(maybe(this::number))),
        maybe(() -> "{\"axes\":[[1,2.50],\n[3, 4]], \"note\":\"ü; \\\"\"}"),
        new Provenance(
            maybe(this::words),
            maybe(this::words),
            list(() -> reading(oneOf("share", "at_risk", "place")))),
        new TreeMap<>(),
        maybe(this::words));
  }

  private PublishedCurve.Point curvePoint() {
    return new PublishedCurve.Point(number(), tenths(random.nextDouble() * 100));
  }

  private List<Appraisal> appraisals() {
    List<Instrument> all = Instrument.vocabulary().all();
    return all.subList(0, random.nextInt(all.size() + 1)).stream().map(this::appraisal).toList();
  }

  private Appraisal appraisal(Instrument by) {
    List<Appraisal.Answer> answers = new ArrayList<>();
    for (Instrument.Item item : by.items()) {
      List<Instrument.Judgement> allowed = by.allowed(item);
      if (random.nextInt(4) > 0) {
        answers.add(
            new Appraisal.Answer(
                item.code(),
                allowed.get(random.nextInt(allowed.size())).code(),
                maybe(this::words),
                maybe(this::words)));
      }
    }
    boolean settled = answers.isEmpty() || random.nextBoolean();
    return new Appraisal(
        by,
        maybe(this::words).orElse(by.version()),
        maybe(() -> oneOf(Outcome.vocabulary())),
        maybe(this::words),
        answers,
        settled
            ? Optional.of(
                new Appraisal.Overall(
                    by.overall().get(random.nextInt(by.overall().size())).code(),
                    maybe(this::words),
                    maybe(this::words)))
            : Optional.empty(),
        list(this::words),
        maybe(() -> new Day(LocalDate.of(2020, 1, 1).plusDays(random.nextInt(2000)))));
  }

  private Arm withReasons(Study study, Arm arm) {
    int row = ArmSheet.write(study).size() - study.arms().size() + study.arms().indexOf(arm);
    return arm.but().missing(reasons(ArmSheet.SHEET, ArmSheet.write(study).get(row))).build();
  }

  private SortedMap<String, Missing> reasons(Sheet sheet, RowWriter written) {
    SortedMap<String, Missing> reasons = new TreeMap<>();
    for (Field<?> field : sheet.fields()) {
      if (!written.cells().containsKey(field.name())
          && !field.name().equals(Template.READINGS)
          && random.nextInt(9) == 0) {
        reasons.put(field.name(), oneOf(Missing.values()));
      }
    }
    return reasons;
  }

  private Arm arm(String id) {
    Arm.Builder arm =
        Arm.with(
                id,
                new MethodUsed(
                    oneOf(Method.vocabulary()),
                    list(() -> oneOf(MethodPart.vocabulary())),
                    maybe(this::words)))
            .baseline(baseline())
            .details(details(DetailKind.ofMethods()))
            .provenance(provenance());
    maybe(this::words).ifPresent(arm::label);
    maybe(this::words).ifPresent(arm::note);
    return arm.build();
  }

  private Baseline baseline() {
    Baseline.Builder baseline = Baseline.with().characteristics(details(DetailKind.ofPatients()));
    maybe(this::count).ifPresent(baseline::patients);
    maybe(this::count).ifPresent(baseline::limbs);
    maybe(this::count).ifPresent(baseline::defects);
    maybe(() -> summary(oneOf(Unit.YEARS, Unit.MONTHS))).ifPresent(baseline::age);
    maybe(this::events).ifPresent(baseline::male);
    maybe(this::events).ifPresent(baseline::smokers);
    maybe(this::events).ifPresent(baseline::diabetics);
    maybe(this::events).ifPresent(baseline::infected);
    maybe(() -> oneOf(YesOrNo.values())).ifPresent(baseline::infectedAnswer);
    baseline.bones(list(() -> new BoneCount(oneOf(Bone.values()), optional(maybe(this::count)))));
    baseline.segments(list(() -> oneOf("42", "32", "33C")));
    maybe(this::words).ifPresent(baseline::boneWords);
    maybe(this::defect).ifPresent(baseline::defect);
    maybe(() -> summary(oneOf(Unit.MONTHS, Unit.DAYS, Unit.YEARS))).ifPresent(baseline::followUp);
    maybe(this::count).ifPresent(baseline::lostToFollowUp);
    return baseline.build();
  }

  private DefectLength defect() {
    return new DefectLength(
        Optional.of(summary(oneOf(Unit.CENTIMETRES, Unit.MILLIMETRES))),
        optionalNumber(maybe(() -> 1 + number())),
        list(
            () -> {
              double from = number();
              return random.nextBoolean()
                  ? new DefectLength.Band(LengthRange.from(from), count())
                  : new DefectLength.Band(new LengthRange(from, from + 2), count());
            }),
        maybe(this::words),
        maybe(() -> oneOf(DefectStage.values())),
        maybe(() -> oneOf(YesOrNo.values())));
  }

  private SortedMap<String, Detail> details(Vocabulary<DetailKind> kinds) {
    SortedMap<String, Detail> details = new TreeMap<>();
    for (DetailKind kind : kinds.all()) {
      if (random.nextInt(4) == 0) {
        double value = number();
        details.put(
            kind.code(),
            kind.numeric()
                ? new Detail(NumberForm.plainText(value), OptionalDouble.of(value))
                : new Detail(words(), OptionalDouble.empty()));
      }
    }
    return details;
  }

  private OutcomeReport outcome(List<Arm> arms) {
    Outcome outcome = oneOf(Outcome.vocabulary());
    OutcomeReport.Builder report =
        OutcomeReport.with(scope(arms), outcome, value(outcome)).provenance(provenance());
    maybe(this::words).ifPresent(report::definition);
    report.definitionKinds(list(() -> oneOf(DefinitionKind.vocabulary())));
    maybe(() -> oneOf(CountedUnit.values())).ifPresent(report::counted);
    maybe(() -> oneOf(Clock.values())).ifPresent(report::clock);
    maybe(this::duration).ifPresent(report::timePoint);
    maybe(this::count).ifPresent(report::followed);
    maybe(
            () ->
                new Subgroup(
                    words(), optionalNumber(maybe(() -> 2.5)), optionalNumber(maybe(() -> 6.0))))
        .ifPresent(report::subgroup);
    maybe(() -> oneOf(Phase.values())).ifPresent(report::phase);
    maybe(
            () ->
                new Money(
                    Currency.getInstance(oneOf("EUR", "JPY", "XAF")), optional(maybe(() -> 2011))))
        .ifPresent(report::money);
    maybe(() -> oneOf(Standing.values())).ifPresent(report::standing);
    maybe(this::words).ifPresent(report::test);
    maybe(
            () ->
                new TestOfMeans(
                    arms.get(0).id(), optionalNumber(maybe(() -> 2.4)), OptionalDouble.of(0.02)))
        .ifPresent(report::tested);
    maybe(this::words).ifPresent(report::note);
    return report.build();
  }

  private Scope scope(List<Arm> arms) {
    int which = random.nextInt(3);
    if (which == 0) {
      return new Scope.AllArms();
    }
    if (which == 1 && arms.size() > 1) {
      return new Scope.Comparison(arms.get(1).id(), arms.get(0).id());
    }
    return new Scope.OneArm(arms.get(0).id());
  }

  private ReportedValue value(Outcome outcome) {
    return switch (random.nextInt(6)) {
      case 0 ->
          outcome.kind() == Outcome.Kind.COUNT
              ? new ReportedValue.Tally(count(), optional(maybe(this::count)))
              : new ReportedValue.Events(events());
      case 1 -> new ReportedValue.Quantity(summary(oneOf(Unit.values())));
      case 2 -> new ReportedValue.Rate(count(), 1 + number(), oneOf(Unit.MONTHS, Unit.YEARS));
      case 3 ->
          new ReportedValue.Effect(
              words(),
              number() - 20,
              optionalNumber(maybe(() -> -3.25)),
              optionalNumber(maybe(() -> 4.5)),
              optionalNumber(maybe(() -> 0.0001)),
              maybe(this::words));
      case 4 ->
          new ReportedValue.Categories(
              List.of(
                  new ReportedValue.Category("excellent", count()),
                  new ReportedValue.Category(words(), count())));
      default -> new ReportedValue.Statement(words(), optional(maybe(this::count)));
    };
  }

  private PatientRow patient(String id, List<Arm> arms) {
    PatientRow.Builder patient =
        PatientRow.with(id, arms.get(random.nextInt(arms.size())).id()).provenance(provenance());
    maybe(() -> 20 + 0.5 * random.nextInt(60)).ifPresent(patient::ageYears);
    maybe(() -> oneOf(Sex.values())).ifPresent(patient::sex);
    maybe(() -> oneOf(Bone.values())).ifPresent(patient::bone);
    maybe(() -> oneOf("42", "41-C3")).ifPresent(patient::segment);
    maybe(() -> oneOf(YesOrNo.values())).ifPresent(patient::infected);
    maybe(this::duration).ifPresent(patient::followUp);
    maybe(
            () ->
                new Length(
                    1 + number(), oneOf(Unit.CENTIMETRES, Unit.MILLIMETRES), random.nextBoolean()))
        .ifPresent(patient::defect);
    maybe(this::words).ifPresent(patient::note);
    SortedMap<String, PatientOutcome> outcomes = new TreeMap<>();
    for (int n = 0; n < 4; n++) {
      Outcome outcome = oneOf(Outcome.vocabulary());
      outcomes.put(outcome.code(), patientOutcome(outcome));
    }
    return patient.outcomes(outcomes).build();
  }

  private PatientOutcome patientOutcome(Outcome outcome) {
    if (outcome.isEvent()) {
      return new PatientOutcome.Happened(oneOf(YesOrNo.values()));
    }
    return outcome.kind() == Outcome.Kind.CATEGORIES
        ? new PatientOutcome.Graded(words())
        : new PatientOutcome.Measured(number() - 10, oneOf(Unit.values()));
  }

  private QuantitySummary summary(Unit unit) {
    QuantitySummaryBuilder summary = QuantitySummary.with(unit);
    double lowest = number();
    double[] rising = new double[5];
    for (int index = 0; index < 5; index++) {
      rising[index] = tenths(lowest + index * 1.3);
    }
    maybe(this::count).ifPresent(summary::n);
    maybe(() -> rising[2]).ifPresent(summary::mean);
    maybe(this::number).ifPresent(summary::standardDeviation);
    maybe(this::number).ifPresent(summary::standardError);
    maybe(() -> rising[1]).ifPresent(summary::lowerLimit);
    maybe(() -> rising[3]).ifPresent(summary::upperLimit);
    maybe(() -> rising[2]).ifPresent(summary::median);
    maybe(() -> rising[1]).ifPresent(summary::lowerQuartile);
    maybe(() -> rising[3]).ifPresent(summary::upperQuartile);
    maybe(() -> rising[0]).ifPresent(summary::minimum);
    summary.maximum(rising[4]);
    maybe(
            () ->
                new UnstatedSpread(
                    number(),
                    optionalNumber(maybe(() -> 60 + number())),
                    optionalNumber(maybe(() -> -1 - number()))))
        .ifPresent(summary::unstatedSpread);
    maybe(this::words).ifPresent(summary::words);
    return summary.build();
  }

  private EventCount events() {
    int total = count();
    boolean counted = random.nextBoolean();
    return new EventCount(
        counted ? OptionalInt.of(random.nextInt(total + 1)) : OptionalInt.empty(),
        random.nextBoolean() ? OptionalInt.of(total) : OptionalInt.empty(),
        counted && random.nextBoolean()
            ? OptionalDouble.empty()
            : OptionalDouble.of(tenths(random.nextDouble() * 100)),
        random.nextBoolean());
  }

  private Duration duration() {
    return new Duration(number(), oneOf(Unit.DAYS, Unit.WEEKS, Unit.MONTHS, Unit.YEARS));
  }

  private PartialDate date() {
    return new PartialDate(
        1990 + random.nextInt(30), optional(maybe(() -> 1 + random.nextInt(12))));
  }

  private Provenance provenance() {
    List<Reading> readings =
        random.nextInt(3) == 0 ? List.of(reading("events"), reading("place")) : List.of();
    return new Provenance(maybe(this::words), maybe(this::words), readings);
  }

  private Reading reading(String column) {
    double left = random.nextInt(4_000) / 10.0;
    PageBox box = new PageBox(left, 88.25, left + 30.1, 97);
    return new Reading(
        column,
        "0123456789abcdef".repeat(2),
        1 + random.nextInt(20),
        random.nextBoolean() ? List.of(box) : List.of(box, new PageBox(0, 100, 20, 110)),
        random.nextBoolean() ? words() : "");
  }

  private String words() {
    return IntStream.rangeClosed(0, random.nextInt(2))
        .mapToObj(n -> AWKWARD.get(random.nextInt(AWKWARD.size())))
        .collect(Collectors.joining(" "));
  }

  private double number() {
    return tenths(random.nextDouble() * 50);
  }

  private double tenths(double value) {
    double scale = random.nextInt(20) == 0 ? 1 : 10;
    return Math.rint(value * scale) / scale;
  }

  private int count() {
    return 1 + random.nextInt(60);
  }

  private <T> Optional<T> maybe(Supplier<T> value) {
    return random.nextBoolean() ? Optional.of(value.get()) : Optional.empty();
  }

  private <T> List<T> list(Supplier<T> item) {
    List<T> items = new ArrayList<>();
    for (int n = random.nextInt(4); n > 0; n--) {
      items.add(item.get());
    }
    return items;
  }

  @SafeVarargs
  private <T> T oneOf(T... choices) {
    return Arrays.asList(choices).get(random.nextInt(choices.length));
  }

  private <T extends gapwise.evidence.vocabulary.Coded> T oneOf(Vocabulary<T> vocabulary) {
    return vocabulary.all().get(random.nextInt(vocabulary.all().size()));
  }

  private static OptionalInt optional(Optional<Integer> value) {
    return value.isPresent() ? OptionalInt.of(value.get()) : OptionalInt.empty();
  }

  private static OptionalDouble optionalNumber(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }
}
