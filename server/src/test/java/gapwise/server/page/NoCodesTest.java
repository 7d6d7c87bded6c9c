package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.server.testing.SharedServer;
import gapwise.server.testing.filled.EveryPage;
import gapwise.server.testing.filled.FilledServer;
import gapwise.server.testing.filled.FilledState;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What people read names fields and values by their words: no page shows the name of a column or a
 * code of the template, but for the import, which speaks of a file that has them.
 */
class NoCodesTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  @RegisterExtension private static final FilledServer FILLED = new FilledServer();

  private static final HttpClient CLIENT = HttpClient.newHttpClient();

  /** What no eye reads, and what is shown as code on purpose. */
  private static final Pattern UNREAD =
      Pattern.compile("(?s)<(script|style|template|pre|code|textarea)\\b.*?</\\1>");

  private static final Pattern TAG = Pattern.compile("<[^>]*>");

  /** A word with a hyphen or an underscore within, and not within an address. */
  private static final Pattern CODE =
      Pattern.compile("(?<![\\w/.=&?-])[a-z0-9]+(?:[_-][a-z0-9]+)+(?![\\w=/-])");

  /** Also a word of English, which pages use as such. */
  private static final String ENGLISH = "second-hand";

  /** Pages that hold a template file against the rules or the records. */
  private static final Set<String> OF_FILES =
      Set.of("import: with mistakes", "import: studies stand here with other content");

  private static final Set<String> CODES = codes();

  private static Set<String> codes() {
    Stream<TemplateColumn> columns =
        Template.names().stream().flatMap(sheet -> Template.columns(sheet).stream());
    return columns
        .flatMap(
            column ->
                Stream.concat(
                    Stream.of(column.name()).filter(name -> name.contains("_")),
                    column.choices().stream()
                        .filter(choice -> choice.code().contains("-"))
                        .filter(
                            choice ->
                                !choice.label().toLowerCase(Locale.ROOT).contains(choice.code()))
                        .map(TemplateColumn.Choice::code)))
        .filter(code -> !code.equals(ENGLISH))
        .collect(Collectors.toUnmodifiableSet());
  }

  static Stream<FilledState> states() {
    return EveryPage.of(SERVER::address, FILLED.states())
        .filter(state -> !OF_FILES.contains(state.name()));
  }

  @ParameterizedTest
  @MethodSource("states")
  void noCodeIsRead(FilledState state) throws IOException, InterruptedException {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(state.address()));
    state.session().ifPresent(value -> request.header("Cookie", "gapwise-session=" + value));
    String page = CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString()).body();
    String read = TAG.matcher(UNREAD.matcher(page).replaceAll("")).replaceAll("\n");
    Set<String> found = new TreeSet<>();
    CODE.matcher(read)
        .results()
        .map(one -> one.group())
        .filter(CODES::contains)
        .forEach(found::add);
    assertEquals(Set.of(), found, state.name());
  }
}
