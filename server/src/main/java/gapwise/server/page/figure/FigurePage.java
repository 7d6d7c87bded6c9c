package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.CurveIntoDraft;
import gapwise.desk.CurveMade;
import gapwise.desk.CurveOf;
import gapwise.desk.Draft;
import gapwise.desk.DraftCurve;
import gapwise.desk.DraftRow;
import gapwise.desk.Drafts;
import gapwise.desk.FigureMarks;
import gapwise.desk.KeptDraft;
import gapwise.desk.ScatterIntoDraft;
import gapwise.desk.ScatterIntoDraft.ScatterOf;
import gapwise.exchange.Template;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Papers;
import gapwise.server.home.Pictures;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.desk.DraftPage;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiFunction;

/** A figure on a page of the paper, or on a picture by itself, read into a draft. */
public final class FigurePage {
  private static final String FIGURE = PagePaths.DESK + "/{draft}/figure";

  private final Templates templates;
  private final Sites sites;
  private final Drafts drafts;
  private final FigureSources sources;

  public FigurePage(
      Templates templates, Sites sites, Drafts drafts, Papers papers, Pictures pictures) {
    this.templates = templates;
    this.sites = sites;
    this.drafts = drafts;
    this.sources = new FigureSources(papers, pictures);
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(FIGURE, Right.EXTRACT, this::open);
    routes.post(FIGURE, Right.EXTRACT, this::look);
    routes.post(FIGURE + "/take", Right.EXTRACT, this::take);
  }

  private void open(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    Optional<String> mended = Optional.ofNullable(context.queryParam("curve"));
    Optional<String> beside = Optional.ofNullable(context.queryParam("beside"));
    FigureFields fields =
        mended
            .map(block -> new FigureFields(kept(kept.draft(), block, TypedTexts::of)))
            .or(
                () ->
                    beside.map(
                        block -> new FigureFields(kept(kept.draft(), block, TypedTexts::beside))))
            .orElseGet(() -> begun(context, kept.draft()));
    show(
        context,
        kept,
        sources.open(kept.draft(), fields),
        fields,
        List.of(),
        new MadeView.NotAsked());
  }

  /** A draft with one group has nothing to choose from. */
  private static FigureFields begun(Context context, Draft draft) {
    FigureFields fields = FigureFields.of(context);
    List<DraftRow> arms = draft.rows(Template.ARMS);
    return arms.size() == 1 ? fields.with(Map.of("arm", arms.get(0).text(Template.ARM))) : fields;
  }

  /** What a curve of the draft gives to the fields. */
  private static SortedMap<String, String> kept(
      Draft draft, String block, BiFunction<DraftCurve, FigureMarks, Map<String, String>> texts) {
    Optional<DraftCurve> curve =
        block.matches("\\d{1,7}")
            ? CurveIntoDraft.find(draft, Integer.parseInt(block))
            : Optional.empty();
    FigureMarks marks =
        curve
            .flatMap(DraftCurve::marks)
            .orElseThrow(() -> new NotFoundResponse(say("figure.no-marks")));
    return new TreeMap<>(texts.apply(curve.get(), marks));
  }

  private void look(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    PostedForm form = new PostedForm(context);
    FigureFields fields = FigureFields.of(form);
    FigureSource source = sources.open(kept.draft(), fields);
    String proposal = form.first("propose");
    String follow = form.first("follow");
    if (!proposal.isEmpty()) {
      propose(context, kept, source, fields, proposal);
    } else if (!follow.isEmpty()) {
      follow(context, kept, source, fields, follow);
    } else {
      MadeView made = made(kept.draft(), fields, source, new Problems());
      show(context, kept, source, fields, List.of(), made);
    }
  }

  private void propose(
      Context context, KeptDraft kept, FigureSource source, FigureFields fields, String name) {
    Proposals.Taken taken =
        new Proposals(source.proposals())
            .taken(name)
            .orElseThrow(() -> new NotFoundResponse(say("figure.no-proposal")));
    FigureFields filled = fields.with(taken.texts());
    if (!taken.group().isEmpty()) {
      filled = filled.with(Map.of("arm", TypedCurve.named(kept.draft(), taken.group())));
    }
    show(context, kept, source, filled, taken.questions(), new MadeView.NotAsked());
  }

  private void follow(
      Context context, KeptDraft kept, FigureSource source, FigureFields fields, String place) {
    Problems problems = new Problems();
    Optional<Axes> axes = TypedFigure.axes(fields, source.picture(), problems);
    Optional<Point> at = FigureSources.place(place);
    if (at.isEmpty()) {
      problems.add("follow", "no-place", say("figure.no-place"));
    }
    List<Point> line =
        axes.isPresent() && at.isPresent()
            ? sources.follow(kept.draft(), source, TypedFigure.plot(axes.get()), at.get())
            : List.of();
    if (problems.isEmpty() && line.size() < 2) {
      problems.add("follow", "no-line", say("figure.no-line"));
    }
    if (!problems.isEmpty()) {
      show(context, kept, source, fields, List.of(), wrong(problems));
      return;
    }
    FigureFields traced = fields.with(Map.of("points", Proposals.lines(axes.orElseThrow(), line)));
    List<String> questions = List.of(say("figure.followed", Map.of("points", line.size())));
    show(context, kept, source, traced, questions, new MadeView.NotAsked());
  }

  private static MadeView wrong(Problems problems) {
    return new MadeView.Wrong(problems.list().stream().map(Problem::message).toList());
  }

  /** What the points make, or what is to be set first, which is told in the problems too. */
  private static MadeView made(
      Draft draft, FigureFields fields, FigureSource source, Problems problems) {
    if (fields.is("kind", FigureFields.SCATTER)) {
      Optional<FigureMarks> marks = TypedFigure.marks(fields, source, problems);
      Optional<ScatterOf> of = TypedScatter.of(fields, draft, problems);
      return marks.isPresent() && of.isPresent()
          ? TypedScatter.shown(draft, marks.get(), of.get(), fields.mark())
          : wrong(problems);
    }
    Optional<FigureMarks> marks = TypedFigure.marks(fields, source, problems);
    Optional<CurveOf> of = TypedCurve.of(fields, draft, problems);
    of.filter(curve -> isThere(draft, curve, fields))
        .ifPresent(curve -> problems.add("outcome", "curve-there", say("figure.curve-there")));
    if (marks.isEmpty() || of.isEmpty() || !problems.isEmpty()) {
      return wrong(problems);
    }
    CurveMade made = ShownCurve.made(marks.get(), of.get());
    if (made instanceof CurveMade.Asked asked) {
      problems.add("points", "asked", asked.sentence());
      return wrong(problems);
    }
    return ShownCurve.of(marks.get(), of.get(), (CurveMade.Made) made, fields.mark());
  }

  /** Whether the draft has another curve of the same group and outcome. */
  private static boolean isThere(Draft draft, CurveOf of, FigureFields fields) {
    return CurveIntoDraft.find(draft, of.arm(), of.outcome())
        .filter(curve -> !fields.is("block", Integer.toString(curve.block())))
        .isPresent();
  }

  private void take(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    PostedForm form = new PostedForm(context);
    FigureFields fields = FigureFields.of(form);
    FigureSource source = sources.open(kept.draft(), fields);
    Problems problems = new Problems();
    MadeView made = made(kept.draft(), fields, source, problems);
    boolean looked = form.first("looked").equals(fields.mark());
    if (!problems.isEmpty() || !looked) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
      List<String> questions = looked ? List.of() : List.of(say("figure.look-first"));
      show(context, kept, source, fields, questions, made);
      return;
    }
    DraftPage.changed(drafts, kept.id(), draft -> taken(draft, fields, source));
    context.redirect(
        PagePaths.DESK
            + "/"
            + kept.id()
            + (fields.is("kind", FigureFields.SCATTER) ? "#patients" : "#curves"),
        HttpStatus.SEE_OTHER);
  }

  /** The draft with what was looked at; the same draft where it does not fit it any more. */
  private static Draft taken(Draft draft, FigureFields fields, FigureSource source) {
    Problems problems = new Problems();
    FigureMarks marks = TypedFigure.marks(fields, source, problems).orElseThrow();
    if (fields.is("kind", FigureFields.SCATTER)) {
      return TypedScatter.of(fields, draft, problems)
          .map(of -> ScatterIntoDraft.take(draft, marks, of))
          .orElseThrow(() -> new ConflictResponse(say("desk.row-gone")));
    }
    CurveOf of =
        TypedCurve.of(fields, draft, problems)
            .orElseThrow(() -> new ConflictResponse(say("desk.row-gone")));
    if (isThere(draft, of, fields)) {
      throw new ConflictResponse(say("figure.curve-there"));
    }
    CurveMade made = ShownCurve.made(marks, of);
    int block =
        fields.text("block").matches("\\d{1,7}") ? Integer.parseInt(fields.text("block")) : 0;
    int instead = CurveIntoDraft.find(draft, block).isPresent() ? block : 0;
    return CurveIntoDraft.take(draft, marks, of, ((CurveMade.Made) made).steps(), instead);
  }

  private void show(
      Context context,
      KeptDraft kept,
      FigureSource source,
      FigureFields fields,
      List<String> questions,
      MadeView made) {
    Draft draft = kept.draft();
    Problems untold = new Problems();
    List<Point> drawn =
        TypedFigure.marks(fields, source, untold).map(FigureMarks::points).orElse(List.of());
    templates.show(
        context,
        "figure/FigurePage",
        new FigureView(
            sites.of(say("figure.title"), Place.DESK),
            kept.id(),
            draft.study(),
            source,
            fields,
            new Proposals(source.proposals()).offers(),
            questions,
            groups(draft),
            drawn,
            made));
  }

  private static List<FigureView.Group> groups(Draft draft) {
    List<FigureView.Group> groups = new ArrayList<>();
    for (DraftRow arm : draft.rows(Template.ARMS)) {
      String patients = arm.text("patients");
      groups.add(
          new FigureView.Group(
              arm.text(Template.ARM),
              arm.text("label")
                  + (patients.isEmpty()
                      ? ""
                      : say("figure.group-of", Map.of("patients", patients)))));
    }
    return groups;
  }
}
