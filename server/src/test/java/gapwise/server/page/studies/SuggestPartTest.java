package gapwise.server.page.studies;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What is said while someone types into the one box. */
class SuggestPartTest {
  @RegisterExtension static final SharedServer running = SharedServer.withStudies();

  private static String part(String query) throws Exception {
    HttpResponse<String> answer = running.get("/understood" + query);
    assertEquals(200, answer.statusCode());
    return answer.body();
  }

  @Test
  void everyWordTypedIsSaidToBeReadLookedForOrLeftAside() throws Exception {
    String part = part("?q=union+bone+transport+over+8+cm+with+marl+since+2010");
    assertTrue(
        part.contains("<q>union</q> is read as <strong>Union, as the paper counts it"), part);
    assertTrue(part.contains("<q>bone transport</q> is read as <strong>Bone transport<"), part);
    assertTrue(
        part.contains("<q>over 8 cm</q> is read as <strong>missing bone 8 cm and more<"), part);
    assertTrue(part.contains("<q>since 2010</q> is read as <strong>published from 2010<"), part);
    assertTrue(part.contains("Looked for as words: <q>marl</q>"), part);
    assertTrue(part.contains("Left aside as joining words: with"), part);
  }

  @Test
  void whatEnterWouldFindIsCountedAndLinkedWithTheFiltersThatStand() throws Exception {
    String part = part("?q=bone+transport&year-from=2020&column=year");
    // series 0, 2, ... 14 are of transport, of 2008 and later; 12 and 14 are of 2020 and 2022
    assertTrue(part.contains("Show 2 groups of patients</a>"), part);
    assertTrue(
        part.contains("href=\"/studies?year-from=2020&amp;column=year&amp;method=bone-transport\""),
        part);
  }

  @Test
  void aWordThatNoRecordHasGetsAnotherSpelling() throws Exception {
    String part = part("?q=qarry");
    assertTrue(part.contains("Did you mean <a href=\"/studies?q=quarry\">quarry</a>?"), part);
    assertFalse(part("?q=quarry").contains("Did you mean"));
  }

  @Test
  void nothingTypedSaysNothing() throws Exception {
    assertTrue(part("").isBlank());
    assertTrue(part("?q=+").isBlank());
  }

  @Test
  void whatIsTypedIsShownAsTextAndNeverAsMarkup() throws Exception {
    String part = part("?q=%3Cscript%3Ealert(1)%3C/script%3E");
    assertFalse(part.contains("<script>"), part);
  }

  @Test
  void moreLettersThanASearchTakesAreToldInThePart() throws Exception {
    String part = part("?q=" + "5+cm+".repeat(1400));
    assertTrue(
        part.contains("Found 6,999 letters; a search takes at most 2,000. Keep the words"), part);
    assertFalse(part.contains("href="), part);
  }

  @Test
  void everyOfHundredsOfLengthsIsRead() throws Exception {
    String part = part("?q=" + "5+cm+".repeat(400));
    assertEquals(400, part.split("<q>5 cm</q> is read as", -1).length - 1);
  }
}
