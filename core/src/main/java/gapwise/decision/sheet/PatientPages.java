package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.option.Aspect;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.decision.situation.Wish;
import gapwise.figure.array.StageStrip;
import gapwise.figure.value.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Makes the page for the patient from a table. */
final class PatientPages {
  private static final List<Aspect> SHARES =
      List.of(Aspect.UNION, Aspect.INFECTION, Aspect.LATER_AMPUTATION);

  /** What the page shows. */
  static final Set<Aspect> SHOWN =
      Set.of(
          Aspect.UNION,
          Aspect.INFECTION,
          Aspect.LATER_AMPUTATION,
          Aspect.FRAME_TIME,
          Aspect.FULL_WEIGHT);

  private final OptionTable table;
  private final List<Option> options;

  private PatientPages(OptionTable table, List<Option> options) {
    this.table = table;
    this.options = options;
  }

  static PatientPage of(OptionTable table, List<Option> options) {
    return new PatientPages(table, options).page();
  }

  private PatientPage page() {
    PatientSituation situation = new PatientSituation(table.situation());
    double axis = StageStrip.axisFor(longest());
    return new PatientPage(
        situation.question(),
        situation.labels(),
        situation.drawing(),
        List.of(say("sheet.choice"), say("sheet.choice-promise")),
        SHARES.stream().map(aspect -> PlainOutcome.of(column(aspect).outcome()).head()).toList(),
        options.stream().map(option -> row(option, axis)).toList(),
        Followed.plain(table, options),
        List.of(say("sheet.nobody"), say("sheet.nobody-rows"), say("sheet.waiting")),
        wishes(),
        table.situation().wishes().size(),
        List.of(
            say("sheet.ask-how-many"),
            say("sheet.ask-fails"),
            say("sheet.ask-home"),
            say("sheet.ask-job")),
        List.of(say("sheet.caution"), say("sheet.caution-groups")));
  }

  private Column column(Aspect aspect) {
    return table.columns().stream()
        .filter(one -> one.aspect() == aspect)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("the table has no " + aspect));
  }

  private double longest() {
    return options.stream()
        .flatMap(
            option ->
                List.of(months(option, Aspect.FRAME_TIME), months(option, Aspect.FULL_WEIGHT))
                    .stream())
        .flatMap(Optional::stream)
        .mapToDouble(one -> Math.max(one.value(), one.upper()))
        .max()
        .orElse(0);
  }

  private Optional<Estimate> months(Option option, Aspect aspect) {
    return table.cell(option, column(aspect)) instanceof Cell.Known known
        ? Values.of(known)
        : Optional.empty();
  }

  private PatientRow row(Option option, double axis) {
    PlainMethod plain = PlainMethod.of(option.method());
    Column frame = column(Aspect.FRAME_TIME);
    Column weight = column(Aspect.FULL_WEIGHT);
    String inFrame = PatientWords.frame(table.cell(option, frame));
    String walking = PatientWords.walking(table.cell(option, weight));
    return new PatientRow(
        option.method(),
        plain,
        SHARES.stream()
            .map(this::column)
            .map(
                column ->
                    PatientWords.share(
                        PlainOutcome.of(column.outcome()), table.cell(option, column)))
            .toList(),
        inFrame,
        walking,
        new StageStrip(
            plain.operations(),
            months(option, Aspect.FRAME_TIME),
            months(option, Aspect.FULL_WEIGHT),
            axis),
        say(
            plain.operations() > 1 ? "sheet.strip-more" : "sheet.strip",
            Map.of("name", plain.name(), "frame", inFrame, "walking", walking)));
  }

  /** Those that were named first, in their order; then the rest. */
  private List<String> wishes() {
    List<Wish> wishes = new ArrayList<>(table.situation().wishes());
    List.of(Wish.values()).stream().filter(one -> !wishes.contains(one)).forEach(wishes::add);
    return wishes.stream().map(PatientWords::wish).toList();
  }
}
