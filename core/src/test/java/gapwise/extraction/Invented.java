package gapwise.extraction;

import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.Template;
import gapwise.screening.Reader;
import gapwise.table.MadeSheet;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Extractions of an invented paper, filled as a template is. */
final class Invented {
  static final String STUDY = "marl-2031";
  static final Reader AB = new Reader("AB");
  static final Reader CD = new Reader("CD");
  static final Reader EF = new Reader("EF");

  /** An arbitrary moment. */
  static final Instant NOW = Instant.parse("2031-05-04T10:00:00Z");

  private final Map<String, List<Map<String, String>>> rows = new LinkedHashMap<>();

  Invented() {
    row("studies", "title", "Pegs of the moon for missing shin bone", "union_definition", "NR");
  }

  Invented row(String sheet, String... cells) {
    Map<String, String> row = new LinkedHashMap<>();
    row.put(Template.STUDY, STUDY);
    for (int at = 0; at < cells.length; at += 2) {
      row.put(cells[at], cells[at + 1]);
    }
    rows.computeIfAbsent(sheet, none -> new ArrayList<>()).add(row);
    return this;
  }

  Study study() {
    List<MadeSheet> sheets = new ArrayList<>();
    rows.forEach(
        (name, filled) -> {
          Set<String> columns = new LinkedHashSet<>();
          filled.forEach(row -> columns.addAll(row.keySet()));
          List<String> order = List.copyOf(columns);
          sheets.add(
              new MadeSheet(
                  name,
                  order,
                  filled.stream()
                      .map(row -> order.stream().map(one -> row.getOrDefault(one, "")).toList())
                      .toList()));
        });
    Imported read = Import.typed(sheets, KnownEvidence.NONE, key -> true).imported();
    if (read instanceof Imported.Wrong wrong) {
      throw new IllegalStateException(wrong.problems().toString());
    }
    return ((Imported.Ready) read).studies().get(0);
  }

  Extraction by(Reader reader) {
    return Extraction.of(study(), reader, Optional.empty(), List.of(), NOW);
  }
}
