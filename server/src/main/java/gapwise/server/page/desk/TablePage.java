package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Draft;
import gapwise.desk.DraftRow;
import gapwise.desk.Drafts;
import gapwise.desk.FoundTable;
import gapwise.desk.KeptDraft;
import gapwise.desk.TableIntoDraft;
import gapwise.evidence.PageBox;
import gapwise.exchange.Template;
import gapwise.paper.Box;
import gapwise.paper.Opened;
import gapwise.paper.Opening;
import gapwise.paper.Page;
import gapwise.paper.PageReading;
import gapwise.paper.Paper;
import gapwise.paper.Refused;
import gapwise.paper.reading.PaperFields;
import gapwise.paper.table.Grid;
import gapwise.paper.table.Tables;
import gapwise.printed.Proposed;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.PageBoxes;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Papers;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.paper.PaperPages;
import gapwise.server.page.part.FoundLine;
import gapwise.server.route.Routes;
import gapwise.untidy.FoundField;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A table, pasted or marked on a page of the paper: looked at, then taken into a draft. */
public final class TablePage {
  private static final String TABLE = PagePaths.DESK + "/{draft}/table";
  private static final String NEW_GROUP = "+";

  private final Templates templates;
  private final Sites sites;
  private final Drafts drafts;
  private final Papers papers;

  public TablePage(Templates templates, Sites sites, Drafts drafts, Papers papers) {
    this.templates = templates;
    this.sites = sites;
    this.drafts = drafts;
    this.papers = papers;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(TABLE, Right.EXTRACT, this::marked);
    routes.post(TABLE, Right.EXTRACT, this::pasted);
    routes.post(TABLE + "/take", Right.EXTRACT, this::take);
  }

  private void marked(Context context) {
    Map<String, String> source = new LinkedHashMap<>();
    if ("yes".equals(context.queryParam("whole"))) {
      show(context, DraftPage.draft(drafts, context), Map.of("whole", "yes"));
      return;
    }
    source.put("page", Optional.ofNullable(context.queryParam("page")).orElse(""));
    source.put("box", Optional.ofNullable(context.queryParam("box")).orElse(""));
    KeptDraft kept = DraftPage.draft(drafts, context);
    show(context, kept, source);
  }

  private void pasted(Context context) {
    Map<String, String> source = Map.of("text", new PostedForm(context).first("text"));
    show(context, DraftPage.draft(drafts, context), source);
  }

  /** The table that a form means. */
  private FoundTable table(Draft draft, Map<String, String> source) {
    String text = source.getOrDefault("text", "");
    if (!text.isBlank()) {
      if (text.length() > FoundTable.MOST_LETTERS) {
        throw refused("text", say("table.too-long", Map.of("most", FoundTable.MOST_LETTERS)));
      }
      if (text.lines().filter(line -> !line.isBlank()).count() > FoundTable.MOST_ROWS) {
        throw refused("text", say("table.too-many-rows", Map.of("most", FoundTable.MOST_ROWS)));
      }
      return FoundTable.pasted(text);
    }
    if (source.containsKey("whole")) {
      return FoundTable.whole(PaperFields.of(paper(draft)));
    }
    Optional<PageBox> box = PageBoxes.read(source.getOrDefault("box", ""));
    Optional<Integer> page = CellAddress.number(source.getOrDefault("page", ""));
    if (box.isEmpty() || page.isEmpty()) {
      throw refused("text", say("table.nothing"));
    }
    return FoundTable.printed(printed(draft, page.get(), box.get()));
  }

  private Paper paper(Draft draft) {
    Opening opening =
        draft
            .paper()
            .flatMap(papers::open)
            .orElseThrow(() -> new NotFoundResponse(say("paper.not-kept")));
    if (opening instanceof Refused refused) {
      throw PaperPages.unread(refused);
    }
    return ((Opened) opening).paper();
  }

  private Grid printed(Draft draft, int number, PageBox box) {
    PageReading reading = paper(draft).page(number);
    if (reading instanceof Refused refused) {
      throw PaperPages.unread(refused);
    }
    return Tables.in((Page) reading, new Box(box.left(), box.top(), box.right(), box.bottom()))
        .orElseThrow(() -> refused("box", say("table.no-words")));
  }

  private static WrongInputException refused(String where, String sentence) {
    Problems problems = new Problems();
    problems.add(where, "no-table", sentence);
    return new WrongInputException(problems.list());
  }

  private void show(Context context, KeptDraft kept, Map<String, String> source) {
    Draft draft = kept.draft();
    FoundTable table = table(draft, source);
    List<FoundField> fields = table.preview().fields();
    BiFunction<Integer, FoundField, FoundLine> told = (at, field) -> line(at, field, table);
    templates.show(
        context,
        "desk/TablePage",
        new TableView(
            sites.of(say("table.title"), Place.DESK),
            kept.id(),
            draft.study(),
            source,
            table.texts(),
            groups(draft, fields),
            draft.rows(Template.ARMS).stream().map(row -> row.text(Template.ARM)).toList(),
            FoundLine.all(fields, Proposed.State.TAKEN, told),
            FoundLine.kinds(
                fields, FoundLine.all(fields, Proposed.State.ASKED, told), Integer.MAX_VALUE),
            table.preview().apart().stream()
                .map(one -> new TableView.Apart(one.words(), one.reason()))
                .toList()));
  }

  private static List<String> names(List<FoundField> fields) {
    return fields.stream().flatMap(field -> field.whose().arm().stream()).distinct().toList();
  }

  /** Groups of the table in their order are taken for those of the draft, to be changed. */
  private static List<TableView.Group> groups(Draft draft, List<FoundField> fields) {
    List<DraftRow> arms = draft.rows(Template.ARMS);
    List<TableView.Group> groups = new ArrayList<>();
    for (String name : names(fields)) {
      String label =
          fields.stream()
              .filter(field -> field.into().equals(Template.ARMS))
              .filter(field -> field.whose().arm().filter(name::equals).isPresent())
              .filter(field -> Set.of("label", "method").contains(field.value().column()))
              .map(FoundField::words)
              .findFirst()
              .orElse("");
      int at = groups.size();
      String meant = at < arms.size() ? arms.get(at).text(Template.ARM) : NEW_GROUP;
      groups.add(new TableView.Group(name, label, meant));
    }
    return groups;
  }

  private static FoundLine line(int index, FoundField field, FoundTable table) {
    String page =
        Optional.ofNullable(table.places().get(field.cell()))
            .map(place -> say("table.on-page", Map.of("page", Integer.toString(place.page()))))
            .orElse("");
    String whose =
        field.whose().patient().or(() -> field.whose().arm()).orElse(say("table.the-study"));
    return FoundLine.of(index, field, whose, page + "“" + field.words() + "”");
  }

  private void take(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    PostedForm form = new PostedForm(context);
    Map<String, String> source = new LinkedHashMap<>();
    for (String name : List.of("text", "page", "box", "whole")) {
      if (!form.first(name).isEmpty()) {
        source.put(name, form.first(name));
      }
    }
    FoundTable table = table(kept.draft(), source);
    List<FoundField> fields = table.preview().fields();
    Set<String> chosen = form.values("take").stream().collect(Collectors.toSet());
    List<FoundField> accepted =
        IntStream.range(0, fields.size())
            .filter(
                at ->
                    fields.get(at).value().state() == Proposed.State.TAKEN
                        || chosen.contains(Integer.toString(at)))
            .mapToObj(fields::get)
            .toList();
    List<String> notTaken = new ArrayList<>();
    DraftPage.changed(
        drafts,
        kept.id(),
        draft -> {
          Draft widened = draft;
          Map<String, String> groups = new LinkedHashMap<>();
          for (String name : names(fields)) {
            String meant = form.first("group." + name);
            if (meant.equals(NEW_GROUP)) {
              meant = NextName.ofGroup(widened.rows(Template.ARMS));
              widened = widened.withGroup(meant);
            }
            groups.put(name, meant);
          }
          groups.values().removeIf(String::isEmpty);
          TableIntoDraft.Taken taken = TableIntoDraft.take(widened, table, accepted, groups);
          notTaken.clear();
          notTaken.addAll(taken.notTaken());
          return taken.draft();
        });
    if (notTaken.isEmpty()) {
      context.redirect(PagePaths.DESK + "/" + kept.id() + "#patients", HttpStatus.SEE_OTHER);
      return;
    }
    templates.show(
        context,
        "desk/TableTaken",
        new TableTakenView(
            sites.of(say("table.title"), Place.DESK),
            PagePaths.DESK + "/" + kept.id(),
            accepted.size(),
            notTaken));
  }
}
