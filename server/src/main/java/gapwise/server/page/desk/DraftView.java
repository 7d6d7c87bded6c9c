package gapwise.server.page.desk;

import gapwise.desk.CountedBack;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One draft on its page.
 *
 * @param site the frame of the page
 * @param id its name in addresses
 * @param study name of the study
 * @param baseVersion the version it changes, 0 for a new study
 * @param tables the paper, then the groups
 * @param outcomes a table for each outcome
 * @param patients patients one by one
 * @param appraisals how it was made, as people judge it
 * @param countedBack counts that printed percentages stand for
 * @param told what is to be said of it
 * @param curves curves that were read off figures
 * @param paper name of the paper beside it
 */
public record DraftView(
    Site site,
    String id,
    String study,
    int baseVersion,
    List<FormTable> tables,
    List<FormTable> outcomes,
    PatientGrid patients,
    List<AppraisalForm> appraisals,
    List<CountedBack> countedBack,
    Told told,
    List<CurveLine> curves,
    Optional<String> paper) {
  public DraftView {
    tables = List.copyOf(tables);
    outcomes = List.copyOf(outcomes);
    appraisals = List.copyOf(appraisals);
    countedBack = List.copyOf(countedBack);
    Objects.requireNonNull(told, "told");
    curves = List.copyOf(curves);
    Objects.requireNonNull(paper, "paper");
  }
}
