package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.exchange.TemplateWords;
import gapwise.extraction.FieldAgreement;
import gapwise.extraction.TeamAgreement;
import gapwise.figure.file.CsvCell;
import gapwise.figure.value.Shown;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.home.Home;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import gapwise.synthesis.agreement.LimitsOfAgreement;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** How far the people of a team agree on each field, before anything is settled. */
public final class AgreementPage {
  private static final String CSV = PagePaths.EXTRACTION_AGREEMENT + ".csv";

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader(
              "sheet",
              "column",
              "papers",
              "both_filled",
              "alike",
              "differ",
              "one_empty",
              "share_alike",
              "share_lower",
              "share_upper",
              "kappa",
              "kappa_lower",
              "kappa_upper",
              "intraclass_correlation",
              "intraclass_lower",
              "intraclass_upper",
              "difference_mean",
              "limits_of_agreement_lower",
              "limits_of_agreement_upper")
          .get();

  private final Templates templates;
  private final Sites sites;
  private final Home home;

  public AgreementPage(Templates templates, Sites sites, Home home) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
  }

  /** What the template shows. */
  public record View(Site site, int papers, List<Line> lines, String csv) {
    public View {
      lines = List.copyOf(lines);
    }
  }

  /** One field; empty text where there is nothing to be told. */
  public record Line(
      String field, String sheet, int papers, int both, int differ, int oneEmpty, Told told) {}

  /** Its numbers in words. */
  public record Told(String share, String beyond, String limits) {}

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.EXTRACTION_AGREEMENT, Right.SEE, this::show);
    routes.get(
        CSV,
        Right.SEE,
        context ->
            Attachment.send(
                context,
                "text/csv; charset=utf-8",
                "agreement-by-field.csv",
                csv(home.extractions().agreement())));
  }

  private void show(Context context) {
    TeamAgreement agreement = home.extractions().agreement();
    templates.show(
        context,
        "extraction/AgreementPage",
        new View(
            sites.of(say("extraction.agreement-title"), Place.EXTRACTION),
            agreement.papers(),
            agreement.fields().stream().map(AgreementPage::line).toList(),
            CSV));
  }

  private static Line line(FieldAgreement field) {
    return new Line(
        field.column().title(),
        TemplateWords.part(field.sheet()),
        field.papers(),
        field.both(),
        field.differ(),
        field.oneEmpty(),
        new Told(
            field.share().map(AgreementPage::percent).orElse(""),
            field
                .kappa()
                .map(kappa -> "\u03ba " + number(kappa))
                .or(() -> field.correlation().map(one -> "ICC " + number(one)))
                .orElse(""),
            field.limits().map(AgreementPage::limits).orElse("")));
  }

  private static String percent(FieldAgreement.Measured share) {
    return whole(share.estimate())
        + " %"
        + share
            .limits()
            .map(it -> " (" + whole(it.lower()) + " to " + whole(it.upper()) + ")")
            .orElse("");
  }

  private static String whole(double share) {
    return Long.toString(Math.round(100 * share));
  }

  private static String number(FieldAgreement.Measured measured) {
    return Shown.number(measured.estimate())
        + measured
            .limits()
            .map(it -> " (" + Shown.number(it.lower()) + " to " + Shown.number(it.upper()) + ")")
            .orElse("");
  }

  private static String limits(LimitsOfAgreement limits) {
    return Shown.number(limits.lower()) + " to " + Shown.number(limits.upper());
  }

  private static String csv(TeamAgreement agreement) {
    StringBuilder out = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
      for (FieldAgreement field : agreement.fields()) {
        List<Object> cells = new ArrayList<>();
        cells.addAll(
            List.of(
                field.sheet(),
                CsvCell.text(field.column().name()),
                field.papers(),
                field.both(),
                field.alike(),
                field.differ(),
                field.oneEmpty()));
        add(cells, field.share());
        add(cells, field.kappa());
        add(cells, field.correlation());
        Optional<LimitsOfAgreement> limits = field.limits();
        cells.add(limits.map(one -> Double.toString(one.mean())).orElse(""));
        cells.add(limits.map(one -> Double.toString(one.lower())).orElse(""));
        cells.add(limits.map(one -> Double.toString(one.upper())).orElse(""));
        printer.printRecord(cells);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }

  private static void add(List<Object> cells, Optional<FieldAgreement.Measured> measured) {
    cells.add(measured.map(one -> Double.toString(one.estimate())).orElse(""));
    cells.add(
        measured
            .flatMap(FieldAgreement.Measured::limits)
            .map(it -> Double.toString(it.lower()))
            .orElse(""));
    cells.add(
        measured
            .flatMap(FieldAgreement.Measured::limits)
            .map(it -> Double.toString(it.upper()))
            .orElse(""));
  }
}
