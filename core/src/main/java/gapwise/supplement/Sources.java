package gapwise.supplement;

import gapwise.cohort.CohortDecision;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.curation.VersionStamp;
import gapwise.evidence.Study;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.selection.LeftOut;
import gapwise.selection.SelectedRow;
import java.io.IOException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Where the data of a supplement come from: one state of an evidence base.
 *
 * @param studies of the state
 * @param decisions what persons settled of shared patients in it
 */
public record Sources(StudiesAt studies, Collection<CohortDecision> decisions) {
  /** The sheets of so many are held in memory, some 50 megabytes; our choice. */
  private static final int MOST_STUDIES = 5_000;

  public Sources {
    Objects.requireNonNull(studies, "studies");
    decisions = List.copyOf(decisions);
  }

  /** The studies that analyses rest on, those among them that were looked at and left out. */
  SupplementData data(List<Analysis> analyses) throws IOException {
    Set<String> ids = new TreeSet<>();
    for (Analysis analysis : analyses) {
      analysis
          .answer()
          .map(answer -> answer.selection())
          .ifPresent(
              selection -> {
                selection.rows().stream().map(SelectedRow::study).map(Study::id).forEach(ids::add);
                selection.leftOut().stream().map(LeftOut::studyId).forEach(ids::add);
              });
    }
    if (ids.size() > MOST_STUDIES) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "",
                  "too-many-studies",
                  "A supplement holds at most "
                      + MOST_STUDIES
                      + " studies, and this one would hold "
                      + ids.size()
                      + ". Narrow the question, or ask for fewer outcomes.")));
    }
    Map<String, KeptStudy> kept = new TreeMap<>(studies.studies(ids));
    return SupplementData.of(kept.values().stream().map(KeptStudy::study).toList(), decisions);
  }

  /** Which version of each study it is, and whether any analysis counts it. */
  String versions(List<Study> all, Set<String> used) throws IOException {
    StringBuilder text = new StringBuilder();
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setHeader("study_id", "version", "change", "written", "counted")
            .get();
    CSVPrinter printer = new CSVPrinter(text, format);
    for (Study study : all) {
      VersionStamp stamp =
          studies
              .study(study.id())
              .map(KeptStudy::stamp)
              .orElseThrow(() -> new IllegalStateException("no study " + study.id()));
      printer.printRecord(
          study.id(),
          stamp.version(),
          stamp.change(),
          stamp.when(),
          used.contains(study.id()) ? "yes" : "no");
    }
    printer.flush();
    return text.toString();
  }
}
