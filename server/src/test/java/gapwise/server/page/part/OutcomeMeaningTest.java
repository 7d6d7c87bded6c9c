package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.testing.SharedServer;
import java.io.IOException;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What an outcome means, and where papers differ, stands where the outcome is read. */
class OutcomeMeaningTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String path) throws IOException, InterruptedException {
    var answer = running.get(path);
    assertEquals(200, answer.statusCode(), path);
    return answer.body();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/pooled?outcome=time-to-union",
        "/by-size?outcome=time-to-union",
        "/studies?outcome=time-to-union",
        "/studies/invented-03",
        "/method"
      })
  void aPageThatShowsAnOutcomeExplainsIt(String path) throws IOException, InterruptedException {
    Outcome outcome = Outcome.of("time-to-union");
    String page = page(path);
    assertTrue(page.contains(outcome.meaning()), path);
    assertTrue(page.contains(outcome.differs()), path);
  }

  @Test
  void thePageOfMethodsAndTheVocabularyExplainEveryOutcome()
      throws IOException, InterruptedException {
    String page = page("/method").replaceAll("&#39;|&#x27;", "'");
    String vocabulary = page("/api/v1/vocabularies");
    for (Outcome outcome : Outcome.vocabulary().all()) {
      assertTrue(page.contains(outcome.differs()), outcome.code());
      assertTrue(
          Pattern.compile(Pattern.quote(outcome.differs())).matcher(vocabulary).find(),
          outcome.code());
    }
  }
}
