package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.DraftRow;
import gapwise.desk.Drafts;
import gapwise.desk.KeptDraft;
import gapwise.desk.ReadWords;
import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.exchange.TemplateWords;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.PageBoxes;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Papers;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The paper beside a draft: handed in, and its words put into fields with their place. */
public final class ReadPage {
  private static final String DRAFT = PagePaths.DESK + "/{draft}";

  private final Templates templates;
  private final Drafts drafts;
  private final Papers papers;

  public ReadPage(Templates templates, Drafts drafts, Papers papers) {
    this.templates = templates;
    this.drafts = drafts;
    this.papers = papers;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.post(DRAFT + "/paper", Right.EXTRACT, this::paper);
    routes.post(DRAFT + "/read", Right.EXTRACT, this::read);
  }

  private void paper(Context context) throws IOException {
    KeptDraft kept = DraftPage.draft(drafts, context);
    PostedForm form = new PostedForm(context);
    if (form.first("without").equals("yes")) {
      kept.draft().paper().ifPresent(papers::remove);
      drafts.change(kept.id(), draft -> draft.withPaper(Optional.empty()), "");
    } else {
      String paper = kept(form);
      drafts.change(kept.id(), draft -> draft.withPaper(Optional.of(paper)), "");
    }
    context.redirect(PagePaths.DESK + "/" + kept.id(), HttpStatus.SEE_OTHER);
  }

  private String kept(PostedForm form) throws IOException {
    List<UploadedFile> files = form.files("paper");
    if (files.size() != 1) {
      throw refused(say("paper.one-file"));
    }
    try (InputStream content = files.get(0).content()) {
      Papers.Kept kept = papers.keep(content);
      if (kept instanceof Papers.Kept.Not not) {
        throw refused(not.refused().sentence());
      }
      return ((Papers.Kept.As) kept).id();
    }
  }

  private static WrongInputException refused(String sentence) {
    Problems problems = new Problems();
    problems.add("paper", "paper-unread", sentence);
    return new WrongInputException(problems.list());
  }

  /**
   * What was put, and what a person must decide.
   *
   * @param told what is to be said of the draft then
   * @param words as printed
   * @param put what stands in which field now
   * @param asked what may be put, each with why it was not
   */
  public record Answer(Told told, String words, List<Line> put, List<Line> asked) {
    public Answer {
      put = List.copyOf(put);
      asked = List.copyOf(asked);
    }
  }

  /**
   * One field.
   *
   * @param cell its element
   * @param name its name in the form
   * @param title what it is
   * @param text what stands in it, or may
   * @param shown the same as people read it
   * @param why why it was not put; empty text for what was
   */
  public record Line(
      String cell, String name, String title, String text, String shown, String why) {}

  private void read(Context context) {
    PostedForm form = new PostedForm(context);
    CellAddress at = CellAddress.of(form.first("cell"));
    KeptDraft before = DraftPage.draft(drafts, context);
    DraftRow row = at.in(before.draft());
    String words = form.first("words");
    Optional<Reading> place = place(before.draft(), at.column(), form);
    List<ReadWords.Put> puts = puts(before.draft(), row, at.column(), words, form.first("as"));
    KeptDraft kept =
        drafts
            .change(before.id(), draft -> withAll(draft, at.row(), puts, place), "")
            .orElseThrow(() -> new NotFoundResponse(say("desk.no-draft")));
    templates.show(
        context,
        "desk/ReadAnswer",
        new Answer(
            Told.of(kept, DraftCheck.of(kept.draft())),
            words,
            lines(row, puts, false),
            lines(row, puts, true)));
  }

  /**
   * What the words give. A box without words, as on a scanned page, is the place of what stands in
   * the field.
   *
   * @param as what a person chose to put; empty text where nothing was chosen
   */
  private static List<ReadWords.Put> puts(
      Draft draft, DraftRow row, String column, String words, String as) {
    if (!as.isEmpty()) {
      return List.of(new ReadWords.Put(column, as, Optional.empty()));
    }
    if (!words.isEmpty()) {
      return ReadWords.of(draft, row, column, words);
    }
    String stands = row.text(column);
    return List.of(
        new ReadWords.Put(
            column,
            stands,
            stands.isEmpty() ? Optional.of(say("paper.type-first")) : Optional.empty()));
  }

  private static Draft withAll(
      Draft draft, int row, List<ReadWords.Put> puts, Optional<Reading> place) {
    Draft changed = draft;
    for (ReadWords.Put put : puts) {
      if (put.asked().isEmpty()) {
        Optional<Reading> own =
            place.map(
                one ->
                    new Reading(put.column(), one.paper(), one.page(), one.boxes(), one.words()));
        changed = new CellAddress(row, put.column()).typed(changed, put.text(), own);
      }
    }
    return changed;
  }

  private static List<Line> lines(DraftRow row, List<ReadWords.Put> puts, boolean asked) {
    List<Line> lines = new ArrayList<>();
    for (ReadWords.Put put : puts) {
      if (put.asked().isPresent() == asked) {
        lines.add(
            new Line(
                FormCell.id(row.number(), put.column()),
                "c." + row.number() + "." + put.column(),
                Template.column(row.sheet(), put.column())
                    .map(TemplateColumn::title)
                    .orElse(put.column()),
                put.text(),
                TemplateWords.cell(row.sheet(), put.column(), put.text()),
                put.asked().orElse("")));
      }
    }
    return lines;
  }

  /** Where the words stand; empty where the form names no page of the draft's paper. */
  private static Optional<Reading> place(Draft draft, String column, PostedForm form) {
    Optional<Integer> page = CellAddress.number(form.first("page"));
    if (draft.paper().isEmpty() || page.isEmpty()) {
      return Optional.empty();
    }
    List<PageBox> boxes = new ArrayList<>();
    for (String text : form.values("box")) {
      PageBoxes.read(text).ifPresent(boxes::add);
    }
    String words = form.first("words");
    boolean sound =
        !boxes.isEmpty()
            && boxes.size() <= Reading.MOST_BOXES
            && page.get() >= 1
            && page.get() <= Reading.MOST_PAGES;
    if (!sound || words.length() > Reading.MOST_WORDS) {
      Problems problems = new Problems();
      problems.add(
          "words",
          "place-too-large",
          say("paper.place-too-large", Map.of("words", Reading.MOST_WORDS)));
      throw new WrongInputException(problems.list());
    }
    return Optional.of(new Reading(column, draft.paper().get(), page.get(), boxes, words));
  }
}
