package gapwise.untidy;

import gapwise.printed.Codes;
import gapwise.printed.Doubt;
import gapwise.printed.Printed;
import gapwise.printed.Proposed;
import gapwise.printed.Proposer;
import gapwise.printed.Setting;
import gapwise.printed.StudyNames;
import gapwise.printed.Wanted;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds of which study, group and patient each entity of a table tells. */
final class Identity {
  private static final Pattern SIZE =
      Pattern.compile("(?i)[(\\[]? ?n ?= ?(\\d{1,6})(?: (?:patients|limbs|cases))? ?[)\\]]?");

  /** A cell whose text counts for another place. */
  record Taken(GridCell cell, GridCell from) {
    static Taken own(GridCell cell) {
      return new Taken(cell, cell);
    }

    Optional<String> carried() {
      return cell.equals(from) ? Optional.empty() : Optional.of(from.id());
    }
  }

  private final Logical table;
  private final Kind kind;
  private final Legend legend;
  private final StudyBook book;
  private final String study;
  private final Fields out;
  private final Set<String> told = new HashSet<>();
  private final Map<String, String> patients = new HashMap<>();

  Identity(Logical table, Kind kind, Legend legend, StudyBook book, String study, Fields out) {
    this.table = table;
    this.kind = kind;
    this.legend = legend;
    this.book = book;
    this.study = study;
    this.out = out;
  }

  /** The identity of an entity; what its cells tell of it is added to the fields. */
  FoundField.Whose of(int entity, Optional<GridCell> overGroup) {
    String id = study(entity);
    Optional<String> arm = arm(entity, id, overGroup);
    Optional<String> patient =
        kind == Kind.PATIENTS
            ? Optional.of(patient(entity, id, arm.orElse("A")))
            : Optional.empty();
    return new FoundField.Whose(id, arm, patient);
  }

  private Optional<Taken> taken(int entity, String target) {
    return table.of(target).stream().findFirst().flatMap(variable -> taken(entity, variable));
  }

  /** The cell of an identity, or the one above where it is blank, merged or a ditto mark. */
  Optional<Taken> taken(int entity, Variable variable) {
    Optional<GridCell> own = table.cell(entity, variable);
    if (own.isPresent() && Marks.isDitto(own.get().text())) {
      return table.above(entity, variable).map(from -> new Taken(own.get(), from));
    }
    if (own.isPresent()) {
      return own.map(Taken::own);
    }
    Optional<GridCell> from =
        table.covering(entity, variable).or(() -> table.above(entity, variable));
    return from.map(cell -> new Taken(blank(entity, variable), cell));
  }

  private GridCell blank(int entity, Variable variable) {
    int row = table.turned() ? variable.at() : table.entities().get(entity);
    int column = table.turned() ? table.entities().get(entity) : variable.at();
    return GridCell.plain(row, column, "", Cells.reference(row, column));
  }

  private String study(int entity) {
    Optional<Taken> name = taken(entity, "study").or(() -> taken(entity, "author"));
    Optional<Taken> year = taken(entity, "year");
    Optional<GridCell> section =
        table.sections().get(entity).filter(line -> StudyNames.is(line.text()));
    if (name.isEmpty() && section.isPresent()) {
      name = section.map(Taken::own);
    }
    if (name.isEmpty() && table.turned()) {
      name =
          table.names().get(entity).stream()
              .filter(cell -> StudyNames.is(cell.text()))
              .findFirst()
              .map(Taken::own);
    }
    if (name.isEmpty()) {
      return study;
    }
    String printed = name.get().from().text();
    boolean full = StudyNames.is(printed);
    String words = StudyNames.shortName(printed).orElseGet(() -> Printed.plain(printed));
    String id =
        StudyBook.id(
            full || year.isEmpty() ? words : words + " " + Printed.plain(year.get().from().text()));
    FoundField.Whose whose = new FoundField.Whose(id, Optional.empty(), Optional.empty());
    if (!name.get().cell().isBlank() || told.add(id)) {
      told.add(id);
      out.add(
          "studies",
          whose,
          name.get(),
          Proposer.propose(
              name.get().from().text(), Wanted.column("studies", "study_id"), Setting.none()));
    }
    if (year.isPresent() && !year.get().cell().isBlank()) {
      out.add(
          "studies",
          whose,
          year.get(),
          Proposer.propose(
              year.get().from().text(), Wanted.column("studies", "year"), Setting.none()));
    }
    return id;
  }

  private Optional<String> arm(int entity, String id, Optional<GridCell> overGroup) {
    Optional<Taken> method = overGroup.map(Taken::own).or(() -> taken(entity, "method"));
    Optional<Taken> group = taken(entity, "group");
    if (method.isEmpty() && group.isEmpty()) {
      method = named(entity);
    }
    if (method.isEmpty() && group.isEmpty()) {
      return Optional.of(unnamed(id));
    }
    Taken from = method.orElseGet(group::orElseThrow);
    String words = withoutSize(from.from().text());
    String key =
        Words.folded(words)
            + (method.isPresent() && group.isPresent()
                ? " " + Words.folded(group.get().from().text())
                : "");
    String arm = book.arm(id, key);
    FoundField.Whose whose = new FoundField.Whose(id, Optional.of(arm), Optional.empty());
    boolean again = !told.add("arm " + id + " " + arm);
    if (!again || kind == Kind.GROUPS && !from.cell().isBlank() && overGroup.isEmpty()) {
      out.add("arms", whose, from, methodOf(words, from));
      size(from, whose);
    }
    return Optional.of(arm);
  }

  /** The group of an entity whose method is not told: the only one that another table knows. */
  private String unnamed(String id) {
    Optional<String> only = book.onlyArm(id);
    boolean elsewhere = only.isPresent() && !told.contains("arm " + id + " " + only.get());
    if (kind == Kind.PATIENTS) {
      return only.orElseGet(() -> book.arm(id, "all"));
    }
    boolean parts = !table.of("subgroup").isEmpty() || !table.of("time-point").isEmpty();
    String arm = elsewhere ? only.get() : parts ? book.arm(id, "all") : book.furtherArm(id);
    told.add("arm " + id + " " + arm);
    return arm;
  }

  private Optional<Taken> named(int entity) {
    if (table.turned() && kind != Kind.PATIENTS) {
      return table.names().get(entity).stream()
          .filter(cell -> !withoutSize(cell.text()).isBlank() && !StudyNames.is(cell.text()))
          .findFirst()
          .map(Taken::own);
    }
    Optional<GridCell> section =
        table.sections().get(entity).filter(line -> !StudyNames.is(line.text()));
    return section
        .filter(line -> Orientation.namesGroup(line.text()) || kind == Kind.PATIENTS)
        .map(Taken::own);
  }

  /** The method that the words name, by themselves or by the legend; asked where unsure. */
  private List<Proposed> methodOf(String words, Taken from) {
    Wanted method = Wanted.column("arms", "method");
    if (Codes.methodNamed(words).isEmpty()) {
      Optional<String> explained =
          legend.of(words).filter(meaning -> Codes.methodNamed(meaning).isPresent());
      if (explained.isPresent()) {
        return Proposer.propose(explained.get(), method, Setting.none()).stream()
            .map(
                one ->
                    one.told(
                        Doubt.WORD,
                        "A line beside the table says that '"
                            + words
                            + "' is '"
                            + explained.get()
                            + "'."))
            .toList();
      }
    }
    List<Proposed> proposals = Proposer.propose(words, method, Setting.none());
    boolean blank =
        from.cell().isBlank()
            && table.cell(0, table.variables().get(0)).isPresent()
            && !from.cell().equals(from.from())
            && !merged(from);
    return blank
        ? proposals.stream()
            .map(
                one ->
                    one.askedBecause(
                        Doubt.CARRIED,
                        "The cell is blank; the last method above is '"
                            + words
                            + "'. Say whether it holds here too."))
            .toList()
        : proposals;
  }

  private boolean merged(Taken taken) {
    return table.matrix().mergedAt(taken.cell().row(), taken.cell().column()).isPresent();
  }

  private static String withoutSize(String text) {
    return SIZE.matcher(text).replaceAll("").strip();
  }

  /** "Transport (n = 19)" tells the size of its group, as does "n = 19" below it. */
  private void size(Taken from, FoundField.Whose whose) {
    List<GridCell> cells = new ArrayList<>(List.of(from.from()));
    if (table.turned()) {
      int column = from.from().column();
      table.names().stream()
          .flatMap(List::stream)
          .filter(cell -> cell.column() == column && !cells.contains(cell))
          .forEach(cells::add);
    }
    for (GridCell cell : cells) {
      Matcher size = SIZE.matcher(cell.text());
      if (size.find()) {
        out.add(
            "arms",
            whose,
            Taken.own(cell),
            List.of(Proposed.taken("patients", size.group(1), Optional.empty())));
        out.size(whose, Double.parseDouble(size.group(1)));
      }
    }
  }

  private String patient(int entity, String id, String arm) {
    Optional<GridCell> cell =
        table.turned()
            ? table.names().get(entity).stream().findFirst()
            : table.of("patient-id").stream()
                .findFirst()
                .or(() -> table.of("row-number").stream().findFirst())
                .flatMap(variable -> table.cell(entity, variable));
    String name =
        cell.map(
                found ->
                    Printed.plain(found.text())
                        .replaceFirst("^(?i)(?:patient|case|pt)\\.? ?(?:no\\.? ?)?(?=\\d)", ""))
            .orElse(String.valueOf(entity + 1));
    String key = id + " " + name;
    // Patients that are numbered from 1 again in each group are different people.
    String before = patients.putIfAbsent(key, arm);
    String unique = before == null || before.equals(arm) ? name : name + " (" + arm + ")";
    FoundField.Whose whose = new FoundField.Whose(id, Optional.of(arm), Optional.of(unique));
    cell.ifPresent(
        found -> {
          Proposed value = Proposed.taken("patient", name, Optional.empty());
          boolean twice = before != null && before.equals(arm);
          out.add(
              "patients",
              whose,
              Taken.own(found),
              List.of(
                  twice
                      ? value.askedBecause(
                          Doubt.CONTRADICTION,
                          "The patient '"
                              + name
                              + "' stands twice in one group. Say whether it is the same person.")
                      : value));
        });
    return unique;
  }
}
