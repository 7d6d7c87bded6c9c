package gapwise.desk;

import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.Warning;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What the import would say of a draft, at its cells: the same rules and the same words.
 *
 * @param noted the gravest first
 * @param study the study that it would become; empty while something in it cannot be so
 */
public record DraftCheck(List<Noted> noted, Optional<Study> study) {
  private static final String NOT_FILLED = "missing-value";

  public DraftCheck {
    noted = List.copyOf(noted);
  }

  /** Reads a draft by itself, as while somebody types; what other studies hold is not looked at. */
  public static DraftCheck of(Draft draft) {
    return of(draft, KnownEvidence.NONE);
  }

  /** Reads a draft beside what stands in the evidence base. */
  public static DraftCheck of(Draft draft, KnownEvidence known) {
    DraftSheets sheets = new DraftSheets(draft);
    return told(draft, sheets, Import.typed(sheets.sheets(), known, key -> true));
  }

  /** What came of a reading. */
  static DraftCheck told(Draft draft, DraftSheets sheets, Import.Typed typed) {
    Set<String> settled =
        draft.settled().stream().map(SettledDoubt::key).collect(Collectors.toSet());
    List<Noted> noted = new ArrayList<>();
    if (typed.imported() instanceof Imported.Wrong wrong) {
      wrong.problems().forEach(problem -> noted.add(problem(sheets, typed, problem)));
    }
    for (Warning warning : typed.imported().warnings()) {
      Noted.Weight weight =
          !warning.asks()
              ? Noted.Weight.PROPOSAL
              : settled.contains(warning.key()) ? Noted.Weight.SETTLED : Noted.Weight.DOUBT;
      noted.add(noted(sheets, typed, warning.problem(), weight, Optional.of(warning.key())));
    }
    noted.sort(Comparator.comparing(Noted::weight));
    Optional<Study> study =
        typed.imported() instanceof Imported.Ready ready
            ? ready.studies().stream().findFirst()
            : Optional.empty();
    return new DraftCheck(noted, study);
  }

  private static Noted problem(DraftSheets sheets, Import.Typed typed, Problem problem) {
    Noted.Weight weight =
        problem.code().equals(NOT_FILLED) || problem.code().startsWith("study-without")
            ? Noted.Weight.NEEDED
            : Noted.Weight.IMPOSSIBLE;
    return noted(sheets, typed, problem, weight, Optional.empty());
  }

  private static Noted noted(
      DraftSheets sheets,
      Import.Typed typed,
      Problem problem,
      Noted.Weight weight,
      Optional<String> key) {
    Optional<Import.Spot> spot = Optional.ofNullable(typed.spots().get(problem.where()));
    Optional<DraftRow> row = spot.flatMap(sheets::row);
    return new Noted(
        weight,
        row.isPresent() ? OptionalInt.of(row.get().number()) : OptionalInt.empty(),
        row.flatMap(found -> spot).map(Import.Spot::columns).orElse(List.of()),
        problem.code(),
        problem.message(),
        key);
  }

  /** How many are of this weight. */
  public int count(Noted.Weight weight) {
    return (int) noted.stream().filter(one -> one.weight() == weight).count();
  }

  /** Those about one row. */
  public List<Noted> of(int row) {
    return noted.stream()
        .filter(one -> one.row().isPresent() && one.row().getAsInt() == row)
        .toList();
  }

  /** Those about no row. */
  public List<Noted> ofNoRow() {
    return noted.stream().filter(one -> one.row().isEmpty()).toList();
  }
}
