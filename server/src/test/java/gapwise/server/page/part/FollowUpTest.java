package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Narrowing to series followed for long enough, on the invented demonstration base. */
class FollowUpTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String path) throws Exception {
    var answer = running.get(path);
    assertEquals(200, answer.statusCode(), path);
    return answer.body().replace("&amp;", "&");
  }

  /** The outcome shows late, by the vocabulary from 24 months on. */
  @ParameterizedTest
  @ValueSource(strings = {"/pooled", "/by-size"})
  void aResultSaysWhichSeriesWereFollowedTooShortlyAndLeadsToTheOthers(String path)
      throws Exception {
    String all = page(path + "?outcome=secondary-amputation");
    assertTrue(all.contains("followed for less than 24 months on average"), all);
    Matcher link = Pattern.compile("href=\"([^\"]*follow-up-from=24)\"").matcher(all);
    assertTrue(link.find());
    String narrowed = page(link.group(1));
    assertTrue(narrowed.contains("followed at least 24 months on average"));
    assertFalse(narrowed.contains("followed for less than"));
  }

  @Test
  void followUpTypedInPlainWordsIsAFilterOfTheList() throws Exception {
    var typed = running.get("/studies?q=union+followed+at+least+2+years");
    assertEquals(303, typed.statusCode());
    String address = typed.headers().firstValue("Location").orElseThrow();
    assertEquals("/studies?outcome=union&follow-up-from=24", address);
    int longer = groups(page(address));
    int all = groups(page("/studies?outcome=union"));
    assertTrue(longer > 0 && longer < all, longer + " of " + all);
  }

  private static int groups(String page) {
    Matcher found = Pattern.compile("(\\d+) groups? of patients in").matcher(page);
    assertTrue(found.find(), page);
    return Integer.parseInt(found.group(1));
  }

  @Test
  void aFollowUpThatIsNoNumberIsRefusedWithWhatToWrite() throws Exception {
    var answer = running.get("/studies?follow-up-from=long");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("expected months such as 12 or 24"), answer.body());
  }
}
