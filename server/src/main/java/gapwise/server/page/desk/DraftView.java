package gapwise.server.page.desk;

import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.OutcomeFamily;
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
 * @param instruments by which it may be judged
 * @param outcomeChoices the outcomes that may be added, under their headings
 * @param told what is to be said of it
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
    List<Instrument> instruments,
    List<OutcomeFamily> outcomeChoices,
    Told told,
    Optional<String> paper) {
  public DraftView {
    tables = List.copyOf(tables);
    outcomes = List.copyOf(outcomes);
    appraisals = List.copyOf(appraisals);
    instruments = List.copyOf(instruments);
    outcomeChoices = List.copyOf(outcomeChoices);
    Objects.requireNonNull(told, "told");
    Objects.requireNonNull(paper, "paper");
  }
}
