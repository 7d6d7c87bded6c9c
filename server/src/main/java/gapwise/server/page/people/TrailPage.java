package gapwise.server.page.people;

import static gapwise.sentence.Sentences.say;

import gapwise.server.account.Account;
import gapwise.server.account.Deeds;
import gapwise.server.account.People;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import gapwise.store.Trail;
import io.javalin.http.Context;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Who did what and when, newest first. */
public final class TrailPage {
  private static final int MOST = 100;
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final People people;

  TrailPage(Templates templates, Sites sites, People people) {
    this.templates = templates;
    this.sites = sites;
    this.people = people;
  }

  /** One entry in words. */
  public record Line(
      String when, String person, String what, String subject, String outcome, String from) {}

  /**
   * What the template shows.
   *
   * @param person whose entries are shown; empty for those of all
   * @param names everybody there is an account of
   * @param older where the next older entries are
   * @param csv where all of them are as a file
   */
  public record View(
      Site site,
      String person,
      List<String> names,
      List<Line> lines,
      Optional<String> older,
      String csv) {}

  void addTo(Routes routes) {
    routes.get(PagePaths.TRAIL, Right.ADMINISTER, this::show);
    routes.get(PagePaths.TRAIL_CSV, Right.ADMINISTER, this::csv);
  }

  /** Whose entries are asked for, as the account writes it; those of all where there is none. */
  private String person(Address address) {
    return people.accounts().find(address.first("person")).map(Account::name).orElse("");
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    String person = person(address);
    Address asked = person.isEmpty() ? address.without(List.of("person")) : address;
    String before = address.first("before");
    long number = before.matches("\\d{1,15}") ? Long.parseLong(before) : Long.MAX_VALUE;
    List<Trail.Entry> found = people.trail().before(person, number, MOST + 1);
    List<Trail.Entry> shown = found.stream().limit(MOST).toList();
    Optional<String> older =
        found.size() <= MOST
            ? Optional.empty()
            : Optional.of(
                asked
                    .with("before", Long.toString(shown.get(MOST - 1).number()))
                    .at(PagePaths.TRAIL));
    templates.show(
        context,
        "people/TrailPage",
        new View(
            sites.of(say("people.trail-title"), Place.NONE),
            person,
            people.accounts().all().stream().map(Account::name).toList(),
            shown.stream().map(TrailPage::line).toList(),
            older,
            asked.without(List.of("before")).at(PagePaths.TRAIL_CSV)));
  }

  private static Line line(Trail.Entry entry) {
    Trail.Deed deed = entry.deed();
    return new Line(
        SECOND.format(entry.when()),
        deed.person(),
        Deeds.Kind.words(deed.kind()),
        deed.subject(),
        came(deed.outcome()),
        deed.address());
  }

  /** What became of it; a status of HTTP (RFC 9110, 15) in words, with its number. */
  private static String came(String outcome) {
    if (!outcome.matches("[1-5]\\d\\d")) {
      return outcome;
    }
    String words =
        switch (outcome.charAt(0)) {
          case '4' -> say("people.refused");
          case '5' -> say("people.failed");
          default -> say("people.done");
        };
    return words + " (" + outcome + ")";
  }

  private void csv(Context context) throws IOException {
    Attachment.announce(context, "text/csv; charset=utf-8", "who-did-what.csv");
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setHeader("number", "when", "person", "kind", "subject", "outcome", "from")
            .get();
    try (CSVPrinter table =
        new CSVPrinter(
            new BufferedWriter(
                new OutputStreamWriter(context.outputStream(), StandardCharsets.UTF_8)),
            format)) {
      people
          .trail()
          .forEach(person(new Address(context.queryParamMap())), entry -> print(table, entry));
    }
  }

  private static void print(CSVPrinter table, Trail.Entry entry) {
    Trail.Deed deed = entry.deed();
    try {
      table.printRecord(
          entry.number(),
          entry.when(),
          deed.person(),
          deed.kind(),
          deed.subject(),
          deed.outcome(),
          deed.address());
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }
}
