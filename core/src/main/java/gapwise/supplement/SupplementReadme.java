package gapwise.supplement;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import java.util.List;
import java.util.Map;

/** What is in a supplement and how to run it again, in plain words. */
final class SupplementReadme {
  static final String FILE = "README.txt";

  private SupplementReadme() {}

  /**
   * What there is to tell.
   *
   * @param title of the supplement
   * @param edition the state of the evidence base
   * @param studies how many studies the data hold
   * @param invented whether any of them is invented
   * @param decisions whether persons settled something of shared patients
   * @param flow whether there is a flow of records
   * @param cautions what must be known beside every result
   */
  record Told(
      String title,
      Edition edition,
      int studies,
      boolean invented,
      boolean decisions,
      boolean flow,
      List<String> cautions) {
    Told {
      cautions = List.copyOf(cautions);
    }
  }

  /** The file. */
  static String text(Told told, List<WrittenAnalysis> analyses, List<String> notAnalysed) {
    StringBuilder text = new StringBuilder();
    line(text, told.title());
    line(text, "");
    if (told.invented()) {
      line(text, say("supplement.invented"));
      line(text, "");
    }
    line(
        text,
        say(
            "supplement.what-it-is",
            Map.of("edition", told.edition().words(), "studies", told.studies())));
    line(text, "");
    line(text, say("supplement.what-is-what"));
    line(text, "");
    line(text, say("supplement.data"));
    line(text, say("supplement.versions"));
    if (told.decisions()) {
      line(text, say("supplement.decisions"));
    }
    line(text, say("supplement.plans"));
    line(text, say("supplement.results"));
    line(text, say("supplement.methods"));
    line(text, say("supplement.figures"));
    line(text, say("supplement.tables"));
    line(text, say("supplement.citations"));
    if (told.flow()) {
      line(text, say("supplement.flow"));
    }
    line(text, say("supplement.descriptor"));
    line(text, "");
    line(text, say("supplement.to-run-again"));
    line(text, "");
    line(text, "  java -jar gapwise.jar rerun FOLDER");
    line(text, "");
    line(text, say("supplement.run-again-meaning", Map.of("program", told.edition().program())));
    line(text, say("supplement.to-import"));
    line(text, "");
    line(text, say("supplement.analyses"));
    line(text, "");
    analyses.forEach(one -> line(text, "  " + one.name() + "  " + one.title()));
    if (!notAnalysed.isEmpty()) {
      line(text, "");
      line(text, say("supplement.not-analysed"));
      line(text, "");
      notAnalysed.forEach(one -> line(text, "  " + one));
    }
    line(text, "");
    line(text, say("supplement.cautions"));
    line(text, "");
    told.cautions().forEach(one -> line(text, "  " + one));
    return text.toString();
  }

  private static void line(StringBuilder text, String words) {
    text.append(words).append('\n');
  }
}
