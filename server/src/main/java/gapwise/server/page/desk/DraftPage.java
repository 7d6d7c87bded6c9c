package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.CountedBack;
import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.DraftFullException;
import gapwise.desk.DraftRow;
import gapwise.desk.Drafts;
import gapwise.desk.KeptDraft;
import gapwise.desk.SettledDoubt;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Template;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Papers;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/** One draft: typed, cell by cell or as a whole form, with what is to be said of it beside. */
public final class DraftPage {
  private static final String DRAFT = PagePaths.DESK + "/{draft}";

  /** As the import names doubts. */
  private static final Pattern KEY = Pattern.compile("[0-9a-f]{16}");

  private final Templates templates;
  private final Sites sites;
  private final Drafts drafts;
  private final Papers papers;

  public DraftPage(Templates templates, Sites sites, Drafts drafts, Papers papers) {
    this.templates = templates;
    this.sites = sites;
    this.drafts = drafts;
    this.papers = papers;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(DRAFT, Right.EXTRACT, this::show);
    routes.post(DRAFT, Right.EXTRACT, this::whole);
    routes.post(DRAFT + "/cell", Right.EXTRACT, this::cell);
    routes.post(DRAFT + "/outcome", Right.EXTRACT, this::outcome);
    routes.post(DRAFT + "/appraisal", Right.EXTRACT, this::appraisal);
    routes.post(DRAFT + "/group", Right.EXTRACT, this::group);
    routes.post(DRAFT + "/patient", Right.EXTRACT, this::patient);
    routes.post(DRAFT + "/column", Right.EXTRACT, this::column);
    routes.post(DRAFT + "/remove", Right.EXTRACT, this::remove);
    routes.post(DRAFT + "/counted-back", Right.EXTRACT, this::countedBack);
    routes.post(DRAFT + "/settle", Right.EXTRACT, this::settle);
  }

  private void show(Context context) {
    KeptDraft kept = draft(drafts, context);
    Draft draft = kept.draft();
    templates.show(
        context,
        "desk/DraftPage",
        new DraftView(
            sites.of(draft.study(), Place.DESK),
            kept.id(),
            draft.study(),
            draft.baseVersion(),
            List.of(FormTable.ofStudy(draft), FormTable.ofGroups(draft)),
            FormTable.ofOutcomes(draft),
            PatientGrid.of(draft),
            AppraisalForm.of(draft),
            CountedBack.of(draft),
            Told.of(kept, DraftCheck.of(draft)),
            CurveLine.in(kept),
            draft.paper().filter(papers::has)));
  }

  /** The draft that an address names. */
  public static KeptDraft draft(Drafts drafts, Context context) {
    return drafts
        .find(context.pathParam("draft"))
        .orElseThrow(() -> new NotFoundResponse(say("desk.no-draft")));
  }

  private KeptDraft change(Context context, UnaryOperator<Draft> change) {
    return changed(drafts, context.pathParam("draft"), change);
  }

  /** A draft changed, or refused in words where it is gone or would be too large. */
  public static KeptDraft changed(Drafts drafts, String id, UnaryOperator<Draft> change) {
    try {
      return drafts
          .change(id, change, "")
          .orElseThrow(() -> new NotFoundResponse(say("desk.no-draft")));
    } catch (DraftFullException full) {
      throw new ConflictResponse(say("desk.too-large", Map.of("most", Draft.MOST_ROWS)));
    }
  }

  /** Back to the form, at the part that was changed. */
  private static void back(Context context, String part) {
    context.redirect(
        PagePaths.DESK + "/" + context.pathParam("draft") + "#" + part, HttpStatus.SEE_OTHER);
  }

  /** Every cell of the form at once: what a browser without our script sends. */
  private void whole(Context context) {
    PostedForm form = new PostedForm(context);
    Map<String, String> typed = new TreeMap<>();
    for (String name : context.formParamMap().keySet()) {
      if (name.startsWith("c.")) {
        typed.put(name, form.first(name));
      }
    }
    change(
        context,
        draft -> {
          Draft changed = draft;
          for (Map.Entry<String, String> one : typed.entrySet()) {
            changed = CellAddress.of(one.getKey()).typed(changed, one.getValue());
          }
          return changed;
        });
    back(context, "told");
  }

  /** One cell, as it is left; the answer is what is to be said of the draft then. */
  private void cell(Context context) {
    PostedForm form = new PostedForm(context);
    CellAddress at = CellAddress.of(form.first("cell"));
    String text = form.first("text");
    String seen = form.first("seen");
    KeptDraft kept =
        change(
            context,
            draft -> {
              String stands = at.in(draft).text(at.column());
              if (!stands.equals(seen) && !stands.equals(text)) {
                throw new ConflictResponse(say("desk.cell-changed", Map.of("text", stands)));
              }
              return at.typed(draft, text);
            });
    templates.show(context, "desk/DraftTold", Told.of(kept, DraftCheck.of(kept.draft())));
  }

  static ConflictResponse goneRow() {
    return new ConflictResponse(say("desk.row-gone"));
  }

  private void outcome(Context context) {
    String code = new PostedForm(context).first("outcome");
    Outcome outcome =
        Outcome.vocabulary()
            .find(code)
            .orElseThrow(() -> new NotFoundResponse(say("desk.no-outcome")));
    KeptDraft kept = change(context, draft -> draft.withOutcome(outcome.code(), usual(outcome)));
    List<FormTable> tables = FormTable.ofOutcomes(kept.draft());
    back(context, "block-" + tables.get(tables.size() - 1).block());
  }

  /** The unit that the outcome is compared in stands there at first, for most papers print it. */
  private static Map<String, String> usual(Outcome outcome) {
    return outcome.unit().map(unit -> Map.of("unit", unit.symbol())).orElse(Map.of());
  }

  private void appraisal(Context context) {
    PostedForm form = new PostedForm(context);
    Instrument instrument =
        Instrument.vocabulary()
            .find(form.first("instrument"))
            .orElseThrow(() -> new NotFoundResponse(say("desk.no-instrument")));
    Map<String, String> cells =
        Outcome.vocabulary()
            .find(form.first("outcome"))
            .map(outcome -> Map.of(Template.OUTCOME, outcome.code()))
            .orElse(Map.of());
    KeptDraft kept = change(context, draft -> draft.withAppraisal(instrument, cells));
    List<DraftRow> rows = kept.draft().rows(Template.APPRAISAL);
    back(context, "block-" + rows.get(rows.size() - 1).block());
  }

  private void group(Context context) {
    KeptDraft kept =
        change(context, draft -> draft.withGroup(NextName.ofGroup(draft.rows(Template.ARMS))));
    List<DraftRow> arms = kept.draft().rows(Template.ARMS);
    back(context, FormCell.id(arms.get(arms.size() - 1).number(), Template.ARM));
  }

  private void patient(Context context) {
    KeptDraft kept =
        change(
            context,
            draft ->
                draft.withRow(
                    Template.PATIENTS,
                    Map.of(
                        Template.ARM,
                        draft.rows(Template.ARMS).stream()
                            .findFirst()
                            .map(row -> row.text(Template.ARM))
                            .orElse("A"),
                        Template.PATIENT,
                        NextName.ofPatient(draft.rows(Template.PATIENTS)))));
    List<DraftRow> rows = kept.draft().rows(Template.PATIENTS);
    back(context, FormCell.id(rows.get(rows.size() - 1).number(), Template.PATIENT));
  }

  private void column(Context context) {
    PostedForm form = new PostedForm(context);
    String sheet = form.first("sheet");
    String column = form.first("column");
    if (!Template.names().contains(sheet) || Template.column(sheet, column).isEmpty()) {
      throw new NotFoundResponse(say("desk.no-column"));
    }
    KeptDraft kept = change(context, draft -> draft.withShown(sheet, column));
    String block = form.first("block");
    back(
        context,
        kept.draft().rows(sheet).stream()
            .filter(row -> block.isEmpty() || Integer.toString(row.block()).equals(block))
            .findFirst()
            .map(row -> FormCell.id(row.number(), column))
            .orElse("told"));
  }

  private void remove(Context context) {
    PostedForm form = new PostedForm(context);
    CellAddress.number(form.first("block"))
        .ifPresent(block -> change(context, draft -> draft.withoutBlock(block)));
    CellAddress.number(form.first("row"))
        .ifPresent(row -> change(context, draft -> withoutRow(draft, row)));
    back(context, "told");
  }

  /** The study itself stays, and so does its last group. */
  private static Draft withoutRow(Draft draft, int number) {
    String sheet = draft.row(number).map(DraftRow::sheet).orElse(Template.STUDIES);
    boolean last = sheet.equals(Template.ARMS) && draft.rows(Template.ARMS).size() == 1;
    return sheet.equals(Template.STUDIES) || last ? draft : draft.withoutRow(number);
  }

  private void countedBack(Context context) {
    PostedForm form = new PostedForm(context);
    Optional<Integer> count = CellAddress.number(form.first("count"));
    CellAddress at = CellAddress.of(form.first("cell"));
    change(
        context,
        draft ->
            CountedBack.of(draft).stream()
                .filter(one -> one.row() == at.row() && one.column().equals(at.column()))
                .filter(one -> count.filter(one.counts()::contains).isPresent())
                .findFirst()
                .map(one -> one.taken(draft, count.orElseThrow()))
                .orElseThrow(() -> new ConflictResponse(say("desk.not-counted-back"))));
    back(context, FormCell.id(at.row(), at.column()));
  }

  private void settle(Context context) {
    PostedForm form = new PostedForm(context);
    SettledForm by = SettledForm.read(form);
    List<String> keys = form.values("key").stream().filter(KEY.asMatchPredicate()).toList();
    change(
        context,
        draft -> {
          Draft settled = draft;
          for (String key : keys) {
            settled = settled.withSettled(new SettledDoubt(key, by.who(), by.why()));
          }
          return settled;
        });
    if (form.first("here").equals("hand-in")) {
      context.redirect(context.path().replaceFirst("/settle$", "/hand-in"), HttpStatus.SEE_OTHER);
    } else {
      back(context, "told");
    }
  }
}
