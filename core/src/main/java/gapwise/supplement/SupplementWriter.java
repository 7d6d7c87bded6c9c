package gapwise.supplement;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.AnswerForest;
import gapwise.answer.Edition;
import gapwise.datapackage.PackageWriter;
import gapwise.figure.Figure;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Writes a supplement. Every number in it is computed from the data in it, and held against the
 * number that the evidence base told: where they differ, nothing is written. The same evidence base
 * and the same questions give the same files.
 */
public final class SupplementWriter {
  private final Sources sources;
  private final Edition edition;
  private final PdfDrawing pdf;

  /**
   * @param sources where studies and decisions come from
   * @param edition the same state of the evidence base
   * @param pdf draws figures as PDF
   */
  public SupplementWriter(Sources sources, Edition edition, PdfDrawing pdf) {
    this.sources = sources;
    this.edition = edition;
    this.pdf = pdf;
  }

  /**
   * What a supplement is wished to hold.
   *
   * @param title in words
   * @param analyses one or more
   * @param notAnalysed what was asked for and has no analysis, each with the reason
   * @param flow the flow of records of a screening
   * @param beside further files
   */
  public record Wish(
      String title,
      List<Analysis> analyses,
      List<String> notAnalysed,
      Optional<Figure> flow,
      List<Beside> beside) {
    public Wish {
      analyses = List.copyOf(analyses);
      notAnalysed = List.copyOf(notAnalysed);
      beside = List.copyOf(beside);
    }
  }

  /**
   * What was written.
   *
   * @param analyses how many there are
   * @param studies how many the data hold
   * @param numbers how many numbers of results came out of the data in the supplement as they were
   */
  public record Written(int analyses, int studies, int numbers) {}

  /**
   * Writes it into a new folder, or a new archive where the name ends in .zip.
   *
   * @throws WrongInputException where there is nothing to write, or a number would be another
   */
  public Written write(Path target, Wish wish) throws IOException {
    if (wish.analyses().isEmpty()) {
      throw new WrongInputException(List.of(nothing(wish.notAnalysed())));
    }
    SupplementData data = sources.data(wish.analyses());
    AnalysisFiles.Found found;
    try (OwnEvidence own = OwnEvidence.of(data.studies(), data.decisions())) {
      found = AnalysisFiles.run(own, wish.analyses());
    }
    try (PackageWriter writer = PackageWriter.into(target)) {
      List<WrittenAnalysis> names = found.analyses().stream().map(AnalysisFiles.Ran::name).toList();
      boolean invented = data.studies().stream().anyMatch(study -> study.invented());
      writer.addText(
          SupplementForm.file(
              SupplementReadme.FILE, SupplementForm.TEXT_TYPE, say("supplement.readme")),
          SupplementReadme.text(
              new SupplementReadme.Told(
                  wish.title(),
                  edition,
                  data.studies().size(),
                  invented,
                  !data.decisions().isEmpty(),
                  wish.flow().isPresent(),
                  AnswerForest.CAUTIONS),
              names,
              wish.notAnalysed()));
      data(writer, data, found);
      new AnalysisFiles(writer, edition, new FigureFiles(writer, pdf)).write(found);
      if (wish.flow().isPresent()) {
        new FigureFiles(writer, pdf).write("screening-flow", wish.flow().get());
      }
      for (Beside one : wish.beside()) {
        writer.addText(SupplementForm.file(one.path(), one.type(), one.description()), one.text());
      }
      writer.finish(head(wish, names, invented));
      return new Written(names.size(), data.studies().size(), found.numbers());
    }
  }

  private static Problem nothing(List<String> why) {
    return new Problem(
        "",
        "nothing-to-supplement",
        "There is nothing to analyse for this. "
            + String.join(" ", why)
            + " Widen the question, or ask for another outcome.");
  }

  private void data(PackageWriter writer, SupplementData data, AnalysisFiles.Found found)
      throws IOException {
    for (String sheet : data.files().names()) {
      writer.addText(data.files().described(sheet, SupplementData.path(sheet)), data.sheet(sheet));
    }
    writer.addText(
        SupplementForm.file(
            "data/versions.csv", SupplementForm.CSV_TYPE, say("supplement.versions-of-studies")),
        sources.versions(data.studies(), found.used()));
    writer.addText(
        SupplementForm.file(
            SupplementData.DECISIONS, "application/jsonl", say("supplement.decisions-of-pairs")),
        data.lines());
  }

  private ObjectNode head(Wish wish, List<WrittenAnalysis> analyses, boolean invented) {
    ObjectNode root = SupplementForm.object();
    root.put("profile", "data-package").put("name", "gapwise-supplement");
    root.put("title", wish.title());
    root.put("description", say("supplement.description"));
    ObjectNode own = root.putObject(SupplementForm.OWN);
    own.put("holds", SupplementForm.HOLDS).put("form", SupplementForm.FORM);
    own.put("program", edition.program());
    edition.change().ifPresent(change -> own.put("change", change));
    edition.date().ifPresent(date -> own.put("lastChange", date.toString()));
    own.put("invented", invented);
    ArrayNode list = own.putArray("analyses");
    analyses.forEach(one -> list.add(one.json()));
    return root;
  }
}
