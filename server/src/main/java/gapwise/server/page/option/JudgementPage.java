package gapwise.server.page.option;

import gapwise.answer.Told;
import gapwise.curation.EvidenceBase;
import gapwise.curation.SaveAnswer;
import gapwise.decision.certainty.Domain;
import gapwise.decision.certainty.Judgement;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.home.RememberedOptions;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** One number, on which a person settles how certain it is. */
public final class JudgementPage {
  private static final int LONGEST_REASON = 500;
  private static final int LONGEST_NAME = 80;

  /** The name of the number in an address: method and aspect. */
  static final String JUDGED = "judged";

  private final Templates templates;
  private final Sites sites;
  private final RememberedOptions options;
  private final EvidenceBase base;

  /**
   * @param options tables of options
   * @param base where judgements are kept
   */
  public JudgementPage(
      Templates templates, Sites sites, RememberedOptions options, EvidenceBase base) {
    this.templates = templates;
    this.sites = sites;
    this.options = options;
    this.base = base;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.COMPARE_JUDGEMENT, Right.SETTLE, this::show);
    routes.post(PagePaths.COMPARE_JUDGEMENT, Right.SETTLE, this::keep);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    Address question = address.without(List.of(JUDGED));
    OptionTable table = options.table(OptionAddress.question(question));
    for (Option option : table.options()) {
      for (Column column : table.columns()) {
        String name = option.method().code() + '.' + column.aspect().code();
        if (address.has(JUDGED, name) && table.cell(option, column) instanceof Cell.Known known) {
          templates.show(context, "option/JudgementPage", view(question, column, option, known));
          return;
        }
      }
    }
    throw new NotFoundResponse(
        "There is no such number in this table. Open the table and choose one there.");
  }

  private JudgementView view(Address question, Column column, Option option, Cell.Known known) {
    return new JudgementView(
        sites.of("How certain is this number?", Place.COMPARE, question),
        JudgedOutcome.of(column, option, known, question),
        known.line().told().map(Told::sentence).orElse(known.line().counted()),
        question.at(PagePaths.COMPARE));
  }

  private void keep(Context context) {
    PostedForm form = new PostedForm(context);
    Problems problems = new Problems();
    String key = first(form, "key");
    if (!key.matches("[0-9a-f]{64}")) {
      problems.add("key", "unknown-number", "not a number of a table; open the table again");
    }
    String version = first(form, "version");
    if (!version.matches("\\d{1,6}")) {
      problems.add("version", "unknown-version", "not a version; open the table again");
    }
    String reason = words(form, "reason", LONGEST_REASON, problems);
    String who = words(form, "who", LONGEST_NAME, problems);
    Map<Domain, Integer> levels = new EnumMap<>(Domain.class);
    for (Domain domain : Domain.values()) {
      String level = first(form, domain.code());
      if (level.matches("[0-3]")) {
        levels.put(domain, Integer.parseInt(level));
      } else {
        problems.add(domain.code(), "not-a-level", "'" + level + "'; expected 0, 1, 2 or 3");
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Judgement judgement = new Judgement(levels, reason, List.copyOf(form.values("data")));
    SaveAnswer answer = base.judge(key, judgement.json(), who, reason, Integer.parseInt(version));
    if (answer instanceof SaveAnswer.NotSaved) {
      throw new ConflictResponse(
          "Somebody else settled this number meanwhile, so nothing was kept. Open the table again,"
              + " read what was settled, and judge then.");
    }
    context.redirect(back(first(form, "here")), HttpStatus.SEE_OTHER);
  }

  private static String first(PostedForm form, String name) {
    return form.values(name).stream().findFirst().map(String::strip).orElse("");
  }

  private static String words(PostedForm form, String name, int longest, Problems problems) {
    String words = first(form, name);
    if (words.isBlank()) {
      problems.add(name, "missing", "may not be empty");
    } else if (words.length() > longest) {
      problems.add(name, "too-long", "found " + words.length() + " letters; at most " + longest);
    }
    return words;
  }

  /** Only to the page that the form stands on. */
  private static String back(String here) {
    return here.startsWith(PagePaths.COMPARE + "?") && !here.contains("\n")
        ? here
        : PagePaths.COMPARE;
  }
}
