package gapwise.untidy;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.printed.Proposed;
import gapwise.printed.Proposer;
import gapwise.printed.Said;
import gapwise.printed.Setting;
import gapwise.printed.Wanted;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads one table whose columns are understood into fields. */
final class TableReading {
  private static final List<String> SIZES = List.of("patients", "limbs", "defects");

  /** Columns of which their name has said already why nothing in them is taken. */
  private static final Set<String> TOLD_ABOVE = Set.of("remark", "p-value", MappingTarget.LEFT_OUT);

  private static final Pattern ALL =
      Pattern.compile(
          "(?i)(total|all|overall|gesamt|both groups|whole series|all patients|p|p[- ]?values?|significance|test)\\b[ .()n=0-9]*");

  private final Logical table;
  private final Kind kind;
  private final Legend legend;
  private final Fields out;
  private final Identity identity;
  private final List<SetApart> apart = new ArrayList<>();
  private final ColumnFacts facts;

  TableReading(Logical table, Legend legend, StudyBook book, String study) {
    this.table = Bands.named(table);
    this.kind = Kind.of(this.table);
    this.legend = legend;
    this.out = new Fields(table.matrix().grid().name());
    this.identity = new Identity(this.table, kind, legend, book, study, out);
    this.facts = new ColumnFacts(this.table);
    headings();
    for (int entity = 0; entity < table.entities().size(); entity++) {
      entity(entity);
    }
  }

  List<FoundField> fields() {
    return CrossChecks.of(out.all(), out::sizes);
  }

  List<SetApart> apart() {
    return apart;
  }

  /** Columns that say nothing that is wanted are set apart with their names. */
  private void headings() {
    for (Variable variable : table.variables()) {
      boolean known = !variable.target().isEmpty() || kind == Kind.OUTCOMES;
      if (!known && !variable.heading().words().isEmpty()) {
        setApart(
            variable, "What this column holds is not understood. Say what it is, or leave it.");
      } else if (variable.target().equals(MappingTarget.LEFT_OUT)) {
        setApart(variable, "A person left this column out.");
      } else if (variable.target().equals("remark")) {
        setApart(variable, "A column of remarks: kept as notes.");
      } else if (kind != Kind.PATIENTS && variable.target().equals("patient-id")) {
        setApart(variable, "It names patients in a table of groups. Say what it is, or leave it.");
      } else if (variable.target().equals("p-value")) {
        setApart(variable, "P values are no values of a group.");
      }
    }
  }

  private void setApart(Variable variable, String reason) {
    for (int entity = 0; entity < table.entities().size(); entity++) {
      table
          .cell(entity, variable)
          .ifPresent(cell -> setApart(cell, "'" + variable.heading().words() + "': " + reason));
    }
  }

  private void setApart(GridCell cell, String reason) {
    apart.add(new SetApart(out.sheet(), cell.id(), cell.text(), reason));
  }

  private void entity(int entity) {
    boolean whole =
        table.turned()
            && table.names().get(entity).stream()
                .anyMatch(cell -> ALL.matcher(cell.text()).matches());
    if (whole) {
      table.seen(entity).stream()
          .filter(cell -> !cell.isBlank())
          .forEach(cell -> setApart(cell, "A column of totals or P values beside the groups."));
      return;
    }
    List<Optional<GridCell>> groups =
        table.variables().stream().map(Variable::group).distinct().toList();
    boolean several = groups.stream().anyMatch(Optional::isPresent);
    for (Optional<GridCell> group : groups) {
      if (!several || group.isPresent()) {
        entity(entity, group, several);
      }
    }
  }

  private void entity(int entity, Optional<GridCell> group, boolean several) {
    FoundField.Whose whose = identity.of(entity, group);
    List<Variable> own =
        table.variables().stream()
            .filter(
                variable ->
                    !several || variable.group().equals(group) || variable.group().isEmpty())
            .toList();
    own.stream().filter(this::isSize).forEach(v -> value(entity, v, whose));
    own.stream()
        .filter(v -> !Targets.isIdentity(v.target()) && !isSize(v))
        .forEach(v -> value(entity, v, whose));
    if (kind == Kind.PATIENTS) {
      new Colours(legend, out).of(table.seen(entity), whose);
    }
  }

  /** Whether a column counts the people of a group; one called "No." may, if it is no list. */
  private boolean isSize(Variable variable) {
    if (variable.target().equals("patients-limbs")) {
      return true;
    }
    boolean numbers =
        kind == Kind.GROUPS
            && variable.target().equals("row-number")
            && table.of("patients").isEmpty()
            && !facts.isRunning(variable);
    return SIZES.contains(variable.target()) || numbers;
  }

  /** Whether anything says that the rows are of groups or studies, and no lines of a list. */
  private boolean saysWhose() {
    return kind != Kind.GROUPS
        || table.turned()
        || table.variables().stream()
            .anyMatch(one -> one.group().isPresent() || Targets.isIdentity(one.target()));
  }

  private void value(int entity, Variable variable, FoundField.Whose whose) {
    Optional<Identity.Taken> taken = taken(entity, variable);
    if (taken.isEmpty()) {
      return;
    }
    Heading heading =
        kind == Kind.OUTCOMES
            ? outcomeHeading(entity, variable)
            : variable.heading().narrowed(aboveColumn(entity));
    if (heading.target().equals("age-sex") && kind == Kind.PATIENTS) {
      new TwoInOne(out).ageAndSex(taken.get(), whose);
      return;
    }
    if (heading.target().equals("patients-limbs") && kind != Kind.PATIENTS) {
      new TwoInOne(out).patientsAndLimbs(taken.get(), whose, heading.words());
      return;
    }
    if (heading.target().equals("male-female")) {
      new TwoInOne(out).menAndWomen(taken.get(), whose, kind);
      return;
    }
    Optional<Wanted> wanted =
        Targets.wanted(heading, kind == Kind.PATIENTS, facts.holdsTimes(variable));
    if (wanted.isEmpty()) {
      if (!heading.target().isEmpty() && !TOLD_ABOVE.contains(heading.target())) {
        setApart(
            taken.get().cell(),
            "'" + heading.words() + "' has no column in the template for this.");
      }
      return;
    }
    Setting setting =
        new Setting(heading.said(), out.size(whose, taken.get().from().text()), facts.commas());
    List<Proposed> values = Proposer.propose(taken.get().from().text(), wanted.get(), setting);
    values = Unsure.graded(wanted.get(), values, taken.get().from().text());
    values = Unsure.of(heading, wanted.get(), values);
    values = isSize(variable) && !saysWhose() ? Unsure.whose(values) : values;
    if (isSize(variable)) {
      size(whose, values);
      if (!table.of("subgroup").isEmpty()) {
        setApart(
            taken.get().cell(), "'" + heading.words() + "' is the size of a part of the group.");
        return;
      }
    }
    FoundField.Row row = row(entity, heading);
    for (Proposed value : values) {
      Proposed seen = Remarks.of(taken.get().cell(), value);
      FoundField.Whose of =
          wanted.get().into().equals("studies")
              ? new FoundField.Whose(whose.study(), Optional.empty(), Optional.empty())
              : whose;
      out.add(
          new FoundField(
              wanted.get().into(),
              of,
              wanted.get().outcome().map(Outcome::code),
              wanted.get().into().equals("outcomes") ? row : FoundField.Row.WHOLE,
              seen,
              out.sheet(),
              taken.get().cell().id(),
              taken.get().carried(),
              taken.get().cell().text()));
    }
  }

  /** A cell, or what a ditto mark or a merged cell stands for; a blank alone is nothing. */
  private Optional<Identity.Taken> taken(int entity, Variable variable) {
    Optional<GridCell> own = table.cell(entity, variable);
    if (own.isPresent() && Marks.isDitto(own.get().text())) {
      return table.above(entity, variable).map(from -> new Identity.Taken(own.get(), from));
    }
    return own.map(Identity.Taken::own);
  }

  /** What stands under the name of a group over its column: "n/N", "%", "12 months". */
  private Said aboveColumn(int entity) {
    Said said = Said.NOTHING;
    if (table.turned()) {
      for (GridCell cell : table.names().get(entity)) {
        Said more = Said.read(cell.text());
        said = more.rest().isEmpty() && !cell.text().contains("=") ? more.and(said) : said;
      }
    }
    return said;
  }

  private Heading outcomeHeading(int entity, Variable variable) {
    String name =
        table.of("outcome-name").stream()
            .findFirst()
            .flatMap(v -> identity.taken(entity, v))
            .map(taken -> taken.from().text())
            .orElse("");
    return variable.target().isEmpty() || variable.target().equals("value")
        ? Heading.of(
                List.of(variable.target().equals("value") ? "" : variable.heading().words(), name))
            .and(variable.heading().said())
        : variable.heading();
  }

  private FoundField.Row row(int entity, Heading heading) {
    Optional<Said.TimePoint> at = heading.said().timePoint();
    if (at.isEmpty()) {
      at =
          table.of("time-point").stream()
              .findFirst()
              .flatMap(v -> identity.taken(entity, v))
              .flatMap(t -> Said.read(t.from().text()).timePoint());
    }
    Optional<String> subgroup =
        table.of("subgroup").stream()
            .findFirst()
            .flatMap(v -> table.cell(entity, v))
            .map(GridCell::text);
    return new FoundField.Row(at, subgroup);
  }

  private void size(FoundField.Whose whose, List<Proposed> values) {
    if (!table.of("subgroup").isEmpty()) {
      out.noSize(whose);
    }
    if (values.size() == 1 && values.get(0).text().matches("\\d{1,6}")) {
      out.size(whose, Double.parseDouble(values.get(0).text()));
    }
  }
}
