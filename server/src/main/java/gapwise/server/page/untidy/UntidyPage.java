package gapwise.server.page.untidy;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Mappings;
import gapwise.printed.Proposed;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.job.ImportJob;
import gapwise.server.job.ImportJobs;
import gapwise.server.job.PostedForm;
import gapwise.server.job.SheetTray;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.FoundLine;
import gapwise.server.route.Routes;
import gapwise.table.TableFile;
import gapwise.untidy.FoundField;
import gapwise.untidy.Mapping;
import gapwise.untidy.Preview;
import gapwise.untidy.TemplateRows;
import gapwise.untidy.UntidySheets;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** A colleague's own sheet, looked at, then handed to the import. */
public final class UntidyPage {
  private static final String UNTIDY = PagePaths.UNTIDY;

  /** Questions and values of each kind that are shown; a person reads no more at once. */
  private static final int MOST_SHOWN = 200;

  private static final int LONGEST_NAME = 80;

  private static final Pattern FIRST_COLUMN = Pattern.compile("\\d{1,4}");

  private final Templates templates;
  private final Sites sites;
  private final SheetTray tray;
  private final ImportJobs jobs;
  private final Mappings mappings;

  public UntidyPage(
      Templates templates, Sites sites, SheetTray tray, ImportJobs jobs, Mappings mappings) {
    this.templates = templates;
    this.sites = sites;
    this.tray = tray;
    this.jobs = jobs;
    this.mappings = mappings;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.post(UNTIDY, Right.EXTRACT, this::lay);
    routes.get(UNTIDY + "/{sheet}", Right.EXTRACT, this::show);
    routes.post(UNTIDY + "/{sheet}", Right.EXTRACT, this::take);
    routes.post(UNTIDY + "/{sheet}/mapping", Right.EXTRACT, this::map);
    routes.post(UNTIDY + "/{sheet}/forget", Right.EXTRACT, this::forget);
  }

  private void lay(Context context) throws IOException {
    List<UploadedFile> files = new PostedForm(context).files("sheet");
    if (files.size() != 1) {
      throw refused("sheet", say("untidy.one-file"));
    }
    try (InputStream content = files.get(0).content()) {
      context.redirect(
          UNTIDY + "/" + tray.lay(files.get(0).filename(), content), HttpStatus.SEE_OTHER);
    }
  }

  private static WrongInputException refused(String where, String sentence) {
    Problems problems = new Problems();
    problems.add(where, "missing-value", sentence);
    return new WrongInputException(problems.list());
  }

  private TableFile file(Context context) {
    return tray.find(context.pathParam("sheet"))
        .orElseThrow(() -> new NotFoundResponse(say("untidy.gone")));
  }

  private void show(Context context) {
    TableFile file = file(context);
    Problems problems = new Problems();
    Preview preview = UntidySheets.read(file, mappings.all(), problems);
    List<FoundField> fields = preview.fields();
    List<FoundLine> clear = FoundLine.all(fields, Proposed.State.TAKEN, UntidyPage::line);
    List<FoundLine> asked = FoundLine.all(fields, Proposed.State.ASKED, UntidyPage::line);
    templates.show(
        context,
        "untidy/UntidyPage",
        new UntidyView(
            sites.of(say("untidy.title"), Place.ADD),
            UNTIDY + "/" + context.pathParam("sheet"),
            file.name(),
            problems.list().stream().map(Problem::line).toList(),
            MappingForm.of(preview, mappings, from(context)),
            MappingForm.mark(preview.mappings()),
            new UntidyView.Counts(clear.size(), asked.size(), preview.apart().size()),
            clear.stream().limit(MOST_SHOWN).toList(),
            FoundLine.kinds(fields, asked, MOST_SHOWN),
            preview.apart().stream()
                .limit(MOST_SHOWN)
                .map(one -> new UntidyView.Apart(one.cell(), one.words(), one.reason()))
                .toList(),
            preview.notes().stream().limit(MOST_SHOWN).toList()));
  }

  private static int from(Context context) {
    return FIRST_COLUMN
            .matcher(Objects.requireNonNullElse(context.queryParam("from"), ""))
            .matches()
        ? Integer.parseInt(Objects.requireNonNull(context.queryParam("from"), "from"))
        : 0;
  }

  /** What a person says of the columns is kept, and the sheet is read again with it. */
  private void map(Context context) {
    PostedForm form = new PostedForm(context);
    mappings.keep(MappingForm.read(mapping(context, form), form), "");
    again(context, form);
  }

  private void forget(Context context) {
    PostedForm form = new PostedForm(context);
    mappings.forget(mapping(context, form));
    again(context, form);
  }

  /** The mapping that the form is about, as the sheet is read now. */
  private Mapping mapping(Context context, PostedForm form) {
    List<Mapping> all = UntidySheets.read(file(context), mappings.all(), new Problems()).mappings();
    return IntStream.range(0, all.size())
        .filter(table -> Integer.toString(table).equals(form.first("table")))
        .mapToObj(all::get)
        .findFirst()
        .orElseThrow(() -> refused("table", say("untidy.no-table")));
  }

  private static void again(Context context, PostedForm form) {
    String from = form.first("from");
    context.redirect(
        UNTIDY
            + "/"
            + context.pathParam("sheet")
            + (FIRST_COLUMN.matcher(from).matches() ? "?from=" + from : "")
            + "#columns",
        HttpStatus.SEE_OTHER);
  }

  private static FoundLine line(int index, FoundField field) {
    List<String> whose = new ArrayList<>(List.of(field.whose().study()));
    field.whose().arm().ifPresent(whose::add);
    field.whose().patient().ifPresent(whose::add);
    return FoundLine.of(
        index,
        field,
        String.join(", ", whose),
        say("untidy.read-from", Map.of("words", field.words(), "cell", field.cell())));
  }

  private void take(Context context) throws IOException {
    PostedForm form = new PostedForm(context);
    String who = form.first("who");
    if (who.isBlank() || who.length() > LONGEST_NAME) {
      throw refused("who", say("untidy.who", Map.of("most", LONGEST_NAME)));
    }
    Preview preview = UntidySheets.read(file(context), mappings.all(), new Problems());
    // What is marked are places in a reading, which another mapping would give to other values.
    String seen = form.first("read-with");
    if (!seen.isEmpty() && !seen.equals(MappingForm.mark(preview.mappings()))) {
      throw new ConflictResponse(say("untidy.read-otherwise"));
    }
    Set<String> chosen = Set.copyOf(form.values("take"));
    List<FoundField> fields = preview.fields();
    List<FoundField> accepted =
        IntStream.range(0, fields.size())
            .filter(at -> isAccepted(fields.get(at), chosen.contains(Integer.toString(at))))
            .mapToObj(at -> taken(fields.get(at)))
            .toList();
    TemplateRows.Written written = TemplateRows.of(accepted);
    if (written.files().isEmpty()) {
      throw refused("sheet", say("untidy.nothing"));
    }
    ImportJob job = jobs.start(uploads(written.files()), who, ImportJob.Agreed.NOTHING);
    preview.mappings().forEach(mapping -> mappings.keep(mapping, who));
    tray.take(context.pathParam("sheet"));
    context.redirect(PagePaths.IMPORT + "/" + job.id(), HttpStatus.SEE_OTHER);
  }

  private static boolean isAccepted(FoundField field, boolean chosen) {
    return field.value().state() == Proposed.State.TAKEN
        || (field.value().state() == Proposed.State.ASKED
            && chosen
            && !field.value().text().isEmpty());
  }

  /** What a person decided is clear from then on. */
  private static FoundField taken(FoundField field) {
    Proposed value = field.value();
    return value.state() == Proposed.State.TAKEN
        ? field
        : new FoundField(
            field.into(),
            field.whose(),
            field.outcome(),
            field.row(),
            Proposed.taken(value.column(), value.text(), value.unit()),
            field.sheet(),
            field.cell(),
            field.carriedFrom(),
            field.words());
  }

  private static List<ImportJobs.Upload> uploads(List<TableFile> files) throws IOException {
    List<ImportJobs.Upload> uploads = new ArrayList<>();
    for (TableFile file : files) {
      try (InputStream content = file.opening().open()) {
        byte[] bytes = content.readAllBytes();
        uploads.add(
            new ImportJobs.Upload(file.name(), bytes.length, new ByteArrayInputStream(bytes)));
      }
    }
    return uploads;
  }
}
