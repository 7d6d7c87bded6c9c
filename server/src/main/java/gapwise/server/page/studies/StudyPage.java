package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.curation.StudyVersion;
import gapwise.curation.VersionStamp;
import gapwise.evidence.Citation;
import gapwise.evidence.Study;
import gapwise.evidence.check.EvidenceCheck;
import gapwise.evidence.rule.Finding;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Extractions;
import gapwise.server.home.References;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import gapwise.wording.Fact;
import gapwise.wording.Facts;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Everything recorded of one study, with where each number stands in the paper. */
public final class StudyPage {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final StudiesAt studies;
  private final References references;
  private final Extractions extractions;

  public StudyPage(
      Templates templates,
      Sites sites,
      StudiesAt studies,
      References references,
      Extractions extractions) {
    this.templates = templates;
    this.sites = sites;
    this.studies = studies;
    this.references = references;
    this.extractions = extractions;
  }

  /**
   * What was published.
   *
   * @param label first author and year
   * @param citation the citation as one line
   * @param doi identifier to follow; empty where there is none
   * @param invented whether there is no such paper, since the study is invented
   * @param apart who read it apart and who settled it
   */
  public record Paper(
      String label,
      String citation,
      Optional<String> doi,
      boolean invented,
      Optional<ReadApart> apart) {
    /** Above this many letters a citation is set as text, not as an opening (our choice). */
    private static final int OPENING = 200;

    /** Whether the citation is too long to open the page in large letters. */
    public boolean isLong() {
      return citation.length() > OPENING;
    }

    static Paper of(Study study, Optional<ReadApart> apart) {
      Citation citation = study.citation();
      return new Paper(citation.label(), citation.line(), citation.doi(), study.invented(), apart);
    }
  }

  /**
   * One version of the record.
   *
   * @param changes address of what it changed; empty for the first
   */
  public record Version(
      String when, String who, String why, String number, Optional<String> changes) {}

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param href address of this page
   * @param paper what was published
   * @param alert what must be known first, such as a retraction; empty for nothing
   * @param notices what kept references say became of the paper
   * @param facts what is recorded of the study as a whole
   * @param table its groups side by side, with what is reported of them
   * @param patients its patients described one by one
   * @param curves its curves of times to an event
   * @param judged what people judged of the way it was made
   * @param doubts what is doubtful in the record
   * @param versions its history, newest first
   */
  public record View(
      Site site,
      String href,
      Paper paper,
      Optional<String> alert,
      Notices notices,
      List<Fact> facts,
      StudyTable table,
      List<PatientLine> patients,
      List<StudyCurves> curves,
      List<Judged> judged,
      List<String> doubts,
      List<Version> versions) {}

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.STUDIES + "/{id}", Right.SEE, this::show);
  }

  private void show(Context context) {
    String id = context.pathParam("id");
    Optional<KeptStudy> kept = studies.study(StudyAddress.id(id)).or(() -> studies.study(id));
    if (kept.isPresent()) {
      templates.show(context, "studies/StudyPage", view(kept.get()));
    } else {
      gone(context, StudyAddress.id(id));
    }
  }

  /** A study that was withdrawn has its versions still, which say by whom and why. */
  private void gone(Context context, String id) {
    if (studies.history(id).isEmpty()) {
      throw new NotFoundResponse("There is no study '" + id + "' here.");
    }
    context.redirect(StudyAddress.of(id) + "/versions", HttpStatus.SEE_OTHER);
  }

  private View view(KeptStudy kept) {
    Study study = kept.study();
    return new View(
        sites.of(study.citation().label(), Place.STUDIES),
        StudyAddress.of(study.id()),
        Paper.of(study, ReadApart.of(kept, extractions)),
        alert(study),
        Notices.of(study, references),
        Facts.of(study),
        StudyTable.of(study),
        study.patients().stream().map(PatientLine::of).toList(),
        StudyCurves.of(study),
        Judged.of(study),
        EvidenceCheck.of(study).stream().map(Finding::message).toList(),
        versions(study.id()));
  }

  private static Optional<String> alert(Study study) {
    return study.reportKind() == ReportKind.RETRACTION
        ? Optional.of(say("studies.retracted"))
        : Optional.empty();
  }

  private List<Version> versions(String id) {
    List<Version> versions = new ArrayList<>();
    for (StudyVersion version : studies.history(id)) {
      VersionStamp stamp = version.stamp();
      String sentence = version.study().isEmpty() ? "studies.version-removed" : "studies.version";
      versions.add(
          0,
          new Version(
              MINUTE.format(stamp.when()),
              stamp.who(),
              stamp.why(),
              say(sentence, Map.of("number", Long.toString(stamp.version()))),
              stamp.version() == 1
                  ? Optional.empty()
                  : Optional.of(StudyAddress.of(id) + "/versions?to=" + stamp.version())));
    }
    return versions;
  }
}
