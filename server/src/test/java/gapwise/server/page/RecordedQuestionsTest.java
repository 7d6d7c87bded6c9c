package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * docs/questions.md says what the demonstration base answers. Every address in it is opened here
 * and must hold the sentences quoted below it.
 */
class RecordedQuestionsTest {
  private static final Path DOCUMENT = Path.of("../docs/questions.md");
  private static final int QUESTIONS = 25;
  private static final int MOST_CLICKS = 5;
  private static final Pattern ADDRESS = Pattern.compile("Address: `(/[^`]*)`");
  private static final Pattern CLICKS = Pattern.compile("Clicks: (\\d+)\\..*");

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static List<String> lines() throws Exception {
    return Files.readAllLines(DOCUMENT);
  }

  @Test
  void everyQuestionIsThereOnceInOrder() throws Exception {
    List<String> numbers =
        lines().stream()
            .filter(line -> line.startsWith("### "))
            .map(line -> line.replaceAll("### (\\d+)\\..*", "$1"))
            .toList();
    assertEquals(IntStream.rangeClosed(1, QUESTIONS).mapToObj(Integer::toString).toList(), numbers);
  }

  @Test
  void noAnswerTakesMoreThanFiveClicks() throws Exception {
    int counted = 0;
    for (String line : lines()) {
      Matcher clicks = CLICKS.matcher(line);
      if (clicks.matches()) {
        counted++;
        assertTrue(Integer.parseInt(clicks.group(1)) <= MOST_CLICKS, line);
      }
    }
    assertTrue(counted >= 15, counted + " questions have their clicks");
  }

  @Test
  void everyAddressAnswersAsIsQuotedBelowIt() throws Exception {
    String page = "";
    String address = "";
    int quoted = 0;
    List<String> missing = new ArrayList<>();
    for (String line : lines()) {
      Matcher asked = ADDRESS.matcher(line);
      if (asked.matches()) {
        address = asked.group(1);
        page = text(running.get(address).body());
      } else if (line.startsWith("> ")) {
        quoted++;
        String quote = line.substring(2).strip();
        if (!page.contains(quote)) {
          missing.add(address + ": " + quote);
        }
      }
    }
    assertEquals(List.of(), missing);
    assertTrue(quoted >= 20, quoted + " sentences are quoted");
  }

  /** The words of a page as a person reads them. */
  private static String text(String html) {
    return html.replaceAll("(?s)<(script|style|svg).*?</\\1>", " ")
        .replaceAll("<[^>]+>", " ")
        .replace("&amp;", "&")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&#34;", "\"")
        .replace("&#39;", "'")
        .replaceAll("[\\s\u00a0]+", " ");
  }
}
