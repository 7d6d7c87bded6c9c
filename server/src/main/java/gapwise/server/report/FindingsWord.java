package gapwise.server.report;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.certainty.Lowering;
import gapwise.decision.certainty.Rating;
import gapwise.decision.findings.Finding;
import gapwise.decision.option.Column;
import gapwise.decision.situation.Fit;
import gapwise.decision.situation.Match;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;

/** A summary of findings as a text document: a table an outcome. */
public final class FindingsWord {
  private static final List<String> HEADS =
      List.of("Method", "Number (95 % interval)", "From", "Fit", "Certainty", "Why");

  private FindingsWord() {}

  /** The document. */
  public static byte[] of(FindingsDocument document) {
    String title = say("decision.title", Map.of("situation", document.situation()));
    WordWriter word = new WordWriter(title);
    if (document.prepared().invented()) {
      word.say("Invented data, no real patients.", WordWriter.PLAIN);
    }
    word.head(title, "Heading1");
    word.say(say("findings.fence"), WordWriter.PLAIN);
    for (Column column : document.findings().table().columns()) {
      outcome(word, column, document.findings().of(column));
    }
    word.say(
        "Made on "
            + document.prepared().on()
            + " from "
            + document.prepared().edition().words()
            + ". "
            + say("findings.advice"),
        WordWriter.PLAIN);
    word.say(document.prepared().address(), WordWriter.SMALL);
    return word.bytes();
  }

  private static void outcome(WordWriter word, Column column, List<Finding> findings) {
    word.head(column.aspect().label(), "Heading2");
    word.say(column.outcome().label() + FindingsCsv.unit(column), WordWriter.SMALL);
    XWPFTable table = word.table(findings.size(), HEADS);
    for (int i = 0; i < findings.size(); i++) {
      Finding one = findings.get(i);
      XWPFTableRow row = table.getRow(i + 1);
      WordWriter.say(
          row.getCell(0),
          one.kind() == Finding.Kind.ONE_METHOD
              ? new String[] {one.about()}
              : new String[] {one.about(), one.kind().label()});
      WordWriter.say(row.getCell(1), number(one));
      WordWriter.say(row.getCell(2), filled(List.of(one.counted(), one.series())));
      WordWriter.say(row.getCell(3), one.fit().map(FindingsWord::fit).orElse(""));
      WordWriter.say(row.getCell(4), one.rating().map(each -> each.level().label()).orElse(""));
      WordWriter.say(row.getCell(5), why(one));
    }
  }

  private static String[] number(Finding one) {
    List<String> lines = new ArrayList<>(List.of(one.words()));
    one.newCentre()
        .map(limits -> Shown.limits(one.column().measure(), limits))
        .ifPresent(limits -> lines.add(say("decision.new-centre", Map.of("limits", limits))));
    return lines.toArray(String[]::new);
  }

  private static String fit(Fit fit) {
    Map<Match, Integer> percents = fit.percents();
    return say(
        "decision.fit",
        Map.of(
            "inside", percents.get(Match.INSIDE),
            "edge", percents.get(Match.EDGE),
            "outside", percents.get(Match.OUTSIDE),
            "unknown", percents.get(Match.UNKNOWN)));
  }

  private static String[] why(Finding one) {
    List<String> lines = new ArrayList<>();
    one.rating().map(Rating::lowering).orElse(List.of()).stream()
        .map(FindingsWord::reason)
        .forEach(lines::add);
    lines.add(one.settled());
    return filled(lines);
  }

  static String reason(Lowering lowering) {
    return say(
        "findings.level",
        Map.of(
            "domain", lowering.domain().label(),
            "levels", lowering.levels(),
            "reason", lowering.reason()));
  }

  /** The lines that say something; an empty one where none does. */
  private static String[] filled(List<String> lines) {
    List<String> told = lines.stream().filter(line -> !line.isEmpty()).toList();
    return told.isEmpty() ? new String[] {""} : told.toArray(String[]::new);
  }
}
