package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.curation.EvidenceBase;
import gapwise.curation.SaveAnswer;
import gapwise.curation.StudiesAt;
import gapwise.curation.StudyVersion;
import gapwise.curation.VersionStamp;
import gapwise.desk.StudyDifference;
import gapwise.evidence.Study;
import gapwise.exchange.TemplateWords;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Versions of a study: compared field by field, brought back, and ended by withdrawing it. */
public final class VersionsPage {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);
  private static final String STUDY = PagePaths.STUDIES + "/{id}";

  private final Templates templates;
  private final Sites sites;
  private final StudiesAt studies;
  private final EvidenceBase base;

  public VersionsPage(Templates templates, Sites sites, StudiesAt studies, EvidenceBase base) {
    this.templates = templates;
    this.sites = sites;
    this.studies = studies;
    this.base = base;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(STUDY + "/versions", Right.SEE, this::compare);
    routes.post(STUDY + "/withdraw", Right.SETTLE, this::withdraw);
    routes.post(STUDY + "/bring-back", Right.SETTLE, this::bringBack);
  }

  private List<StudyVersion> history(Context context) {
    List<StudyVersion> history = studies.history(id(context));
    if (history.isEmpty()) {
      throw new NotFoundResponse(say("versions.none"));
    }
    return history;
  }

  private static String id(Context context) {
    return StudyAddress.id(context.pathParam("id"));
  }

  private void compare(Context context) {
    List<StudyVersion> history = history(context);
    Address address = new Address(context.queryParamMap());
    int last = history.size();
    int to = CellAddress.number(address.first("to")).orElse(last);
    int from = CellAddress.number(address.first("from")).orElse(Math.max(1, to - 1));
    StudyVersion before = version(history, from);
    StudyVersion after = version(history, to);
    templates.show(
        context,
        "desk/VersionsPage",
        new VersionsView(
            sites.of(say("versions.title"), Place.STUDIES),
            id(context),
            StudyAddress.of(id(context)),
            side(before),
            side(after),
            last,
            changes(before, after)));
  }

  private static StudyVersion version(List<StudyVersion> history, int number) {
    if (number < 1 || number > history.size()) {
      throw new NotFoundResponse(
          say(
              "versions.no-such",
              Map.of(
                  "version", Integer.toString(number), "last", Integer.toString(history.size()))));
    }
    return history.get(number - 1);
  }

  private static VersionsView.Side side(StudyVersion version) {
    VersionStamp stamp = version.stamp();
    return new VersionsView.Side(
        (int) stamp.version(),
        MINUTE.format(stamp.when()) + ", " + stamp.who() + ": " + stamp.why(),
        version.study().isEmpty());
  }

  private static List<VersionsView.Line> changes(StudyVersion before, StudyVersion after) {
    if (before.study().isEmpty() || after.study().isEmpty()) {
      return List.of();
    }
    return lines(before.study().get(), after.study().get());
  }

  /** Each field that differs between two versions, as the pages tell it. */
  static List<VersionsView.Line> lines(Study before, Study after) {
    return StudyDifference.between(before, after).stream()
        .map(
            change ->
                new VersionsView.Line(
                    change.whose().isEmpty()
                        ? TemplateWords.part(change.sheet())
                        : TemplateWords.part(change.sheet())
                            + " "
                            + String.join(", ", change.whose()),
                    change.column().title(),
                    change.column().inWords(change.before()),
                    change.column().inWords(change.after())))
        .toList();
  }

  private void withdraw(Context context) {
    PostedForm form = new PostedForm(context);
    SettledForm by = SettledForm.read(form);
    String id = id(context);
    answered(base.remove(id, by.who(), by.why(), seen(form)));
    context.redirect(StudyAddress.of(id) + "/versions", HttpStatus.SEE_OTHER);
  }

  private void bringBack(Context context) {
    PostedForm form = new PostedForm(context);
    SettledForm by = SettledForm.read(form);
    int wanted = CellAddress.number(form.first("version")).orElse(0);
    Optional<Study> study = version(history(context), wanted).study();
    if (study.isEmpty()) {
      throw new NotFoundResponse(say("versions.withdrawn-then"));
    }
    answered(base.save(study.get(), by.who(), by.why(), seen(form)));
    context.redirect(StudyAddress.of(id(context)), HttpStatus.SEE_OTHER);
  }

  /** The last version that the person saw. */
  private static int seen(PostedForm form) {
    return CellAddress.number(form.first("seen")).orElse(0);
  }

  private static void answered(SaveAnswer answer) {
    if (answer instanceof SaveAnswer.NotSaved) {
      throw new ConflictResponse(say("versions.overtaken"));
    }
  }
}
