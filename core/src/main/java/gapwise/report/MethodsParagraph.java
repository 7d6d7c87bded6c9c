package gapwise.report;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.result.Origin;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Map;

/**
 * What was done for a result, as a journal prints it: sentences in the past tense, each with the
 * numbers of the papers that its method is taken from, these papers, and the plan. It says what was
 * run: settings without a bearing are not told, nor what was asked and came to nothing as if it had
 * been done. Free text of a plan, such as its title, is never part of it.
 *
 * @param paragraphs each of one sentence or more
 * @param references in the order of their numbers, from 1
 * @param plan with every default filled in
 */
public record MethodsParagraph(
    List<List<String>> paragraphs, List<String> references, ObjectNode plan) {
  public MethodsParagraph {
    paragraphs = paragraphs.stream().map(List::copyOf).toList();
    references = List.copyOf(references);
    plan = plan.deepCopy();
  }

  @Override
  public ObjectNode plan() {
    return plan.deepCopy();
  }

  /** The paragraph of a result and of what made it. */
  public static MethodsParagraph of(Result result, Origin origin) {
    Telling telling = told(result, origin);
    return new MethodsParagraph(telling.paragraphs(), telling.references(), result.plan());
  }

  /** All that is said, with its names. */
  static Telling told(Result result, Origin origin) {
    Settings settings = new Settings(result.plan());
    Telling telling = new Telling();
    telling.paragraph();
    DataWords data = new DataWords(telling, settings, result);
    switch (settings.word("task")) {
      case "synthesis" -> synthesis(telling, settings, result, data);
      case "multiverse" -> {
        data.rowsOfStudies();
        telling.paragraph();
        MeasureWords measure = new MeasureWords(telling, settings, result);
        measure.varied();
        new MultiverseWords(telling, settings, result).tell();
      }
      default -> other(telling, settings, result, data);
    }
    telling.paragraph();
    new SoftwareWords(telling, settings, origin).tell(result);
    return telling;
  }

  private static void synthesis(Telling telling, Settings settings, Result result, DataWords data) {
    data.rowsOfStudies();
    telling.paragraph();
    new MeasureWords(telling, settings, result).tell();
    if (settings.is("model", "network")) {
      new NetworkWords(telling, settings, result).tell();
    } else {
      new PoolingWords(telling, settings, result).tell(data.analysed());
      telling.paragraph();
      new PartWords(telling, settings, result).tell();
    }
  }

  private static void other(Telling telling, Settings settings, Result result, DataWords data) {
    OneTaskWords words = new OneTaskWords(telling, settings, result);
    data.source();
    switch (settings.word("task")) {
      case "interval" -> {
        data.counted();
        words.interval();
      }
      case "convert" -> {
        data.counted();
        words.convert();
      }
      case "agreement" -> words.agreement();
      case "patients-with-summaries" -> words.patients();
      case "trial" -> words.trial();
      default -> new CurveWords(telling, settings, result).tell();
    }
  }

  /** The whole as plain text: paragraphs, numbered references, and the plan as an appendix. */
  public String text() {
    StringBuilder text = new StringBuilder(say("report.heading")).append("\n\n");
    for (List<String> paragraph : paragraphs) {
      text.append(String.join(" ", paragraph)).append("\n\n");
    }
    if (!references.isEmpty()) {
      text.append(say("report.references")).append("\n\n");
      for (int i = 0; i < references.size(); i++) {
        text.append(
                say(
                    "report.reference",
                    Map.of("number", String.valueOf(i + 1), "reference", references.get(i))))
            .append('\n');
      }
      text.append('\n');
    }
    return text.append(say("report.appendix"))
        .append("\n\n")
        .append(plan.toPrettyString().replace(System.lineSeparator(), "\n"))
        .append('\n')
        .toString();
  }
}
