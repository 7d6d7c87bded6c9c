package gapwise.server.page.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * References accepted, searched, settled and taken to the desk by forms alone. All are invented.
 */
@Timeout(120)
class KeptReferencesTest {
  private static final Pattern SETTLES =
      Pattern.compile("value=\"(same|related|different) ([^\"]+)\"");
  private static final Pattern KEPT = Pattern.compile("/references/kept/(ref-[0-9a-f]{16})");

  @TempDir Path folder;

  private static String plain(String page) {
    return page.replaceAll("<[^>]+>", " ")
        .replace("&#34;", "\"")
        .replace("&#39;", "'")
        .replaceAll("\\s+", " ");
  }

  private static void holds(String page, String sentence) {
    assertTrue(plain(page).contains(sentence), sentence + " in " + plain(page));
  }

  private static List<String> pairs(RunningServer running) throws Exception {
    List<String> pairs = new ArrayList<>();
    Matcher found = SETTLES.matcher(running.get("/references/pairs").body());
    while (found.find()) {
      if (found.group(1).equals("same")) {
        pairs.add(found.group(2));
      }
    }
    return pairs;
  }

  private static String first(RunningServer running, String query) throws Exception {
    Matcher found = KEPT.matcher(running.get("/references/kept?q=" + query).body());
    assertTrue(found.find(), query);
    return found.group();
  }

  @Test
  void nothingIsKeptUntilAPersonAcceptsItWithItsSearches() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      String path = KeptFiles.handedIn(running, "one.ris", KeptFiles.record("p1", ""));
      assertFalse(running.get("/references").body().contains("Search kept references"));
      HttpResponse<String> wrong =
          KeptFiles.post(
              running,
              path + "/keep",
              "rows",
              "1",
              "database-0",
              "Invented Index",
              "date-0",
              "3031-02-03",
              "count-0",
              "many",
              "file-0",
              "one.ris");
      assertEquals(422, wrong.statusCode(), wrong.body());
      holds(wrong.body(), "Give your name or initials");
      holds(wrong.body(), "where the number of records that the database reported was expected");
      assertFalse(running.get("/references").body().contains("Search kept references"));
      HttpResponse<String> future =
          KeptFiles.post(
              running,
              path + "/keep",
              "who",
              "AB",
              "rows",
              "1",
              "database-0",
              "Invented Index",
              "date-0",
              "3031-02-03");
      holds(future.body(), "The day lies in the future.");
      holds(future.body(), "The words of the search are missing.");
      HttpResponse<String> kept =
          KeptFiles.post(
              running,
              path + "/keep",
              "who",
              "AB",
              "rows",
              "1",
              "database-0",
              "Invented Index",
              "date-0",
              "2021-02-03",
              "count-0",
              "2",
              "words-0",
              "=forearm AND nail",
              "file-0",
              "one.ris");
      assertEquals(303, kept.statusCode(), kept.body());
      KeptFiles.settled(running, path);
      holds(running.get(path).body(), "one.ris: 1 reference is new");
      String overview = running.get("/references").body();
      holds(overview, "1 reference is kept, of 1 paper");
      holds(overview, "Invented Index");
      String csv = running.get("/references/searches.csv").body();
      assertEquals(
          "database,date,words,count_reported,file,limits,who\r\n"
              + "Invented Index,2021-02-03,'=forearm AND nail,2,one.ris,,AB\r\n",
          csv);
    }
  }

  @Test
  void aPairIsSettledOnceAndItsGroupIsLedByTheFullestRecord() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      KeptFiles.kept(
          running,
          "one.ris",
          KeptFiles.record("p1", "") + KeptFiles.record("p2", "AB  - A tale of arms.\n"));
      List<String> open = pairs(running);
      assertEquals(3, open.size(), "two records and the study");
      HttpResponse<String> nameless =
          KeptFiles.post(running, "/references/pairs", "settle", "same " + open.get(0));
      assertEquals(422, nameless.statusCode(), nameless.body());
      HttpResponse<String> stale =
          KeptFiles.post(
              running,
              "/references/pairs",
              "who",
              "AB",
              "why",
              "looked",
              "settle",
              "same " + "0".repeat(24) + open.get(0).substring(24));
      assertEquals(409, stale.statusCode(), stale.body());
      assertEquals(3, pairs(running).size());
      for (String pair : open.subList(0, 2)) {
        HttpResponse<String> settled =
            KeptFiles.post(
                running,
                "/references/pairs",
                "who",
                "AB",
                "why",
                "looked",
                "settle",
                "same " + pair);
        assertEquals(303, settled.statusCode(), settled.body());
      }
      assertEquals(List.of(), pairs(running), "the third follows from two");
      holds(running.get("/references/kept").body(), "leads 1 other record of this paper");
      String one = running.get(first(running, "nails")).body();
      holds(one, "Settled as the same paper");
      holds(one, "Studies of this paper");
      HttpResponse<String> against =
          KeptFiles.post(
              running,
              "/references/pairs",
              "who",
              "CD",
              "why",
              "not so",
              "settle",
              "different " + open.get(2));
      assertEquals(422, against.statusCode(), against.body());
      holds(against.body(), "Other decisions make these two one paper");
      KeptFiles.kept(
          running,
          "one.ris",
          KeptFiles.record("p1", "AB  - Told now.\n") + KeptFiles.record("p9", ""));
      assertTrue(
          plain(running.get("/references/pairs").body()).contains("One of the two has changed"));
    }
  }

  @Test
  void aRetractionAmongKeptReferencesStandsOnTheStudyAndMarksNothing() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      assertFalse(running.get("/studies/kell-2001").body().contains("retracted"));
      KeptFiles.kept(running, "one.ris", KeptFiles.NOTICE);
      String page = running.get("/studies/kell-2001").body();
      holds(page, "Kept references say that this paper was retracted.");
      holds(page, "10.5555/notice");
      holds(page, "The record of this study is not marked as retracted");
      holds(running.get("/studies").body(), "said to be retracted");
      HttpResponse<String> draft =
          KeptFiles.post(running, "/references/mark", "study", "kell-2001");
      assertEquals(303, draft.statusCode(), draft.body());
      String address = draft.headers().firstValue("Location").orElseThrow();
      String desk = running.get(address.substring(address.indexOf("/desk/"))).body();
      assertTrue(desk.contains("value=\"retraction\" selected"), "the draft is marked");
      holds(running.get("/studies/kell-2001").body(), "is not marked as retracted");
    }
  }

  @Test
  void aKeptReferenceBecomesADraftWithItsCitation() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      KeptFiles.kept(
          running,
          "one.ris",
          KeptFiles.record("p1", "AU  - Forearm Study Group\nDO  - 10.5555/paper\nAB  - Arms.\n"));
      String reference = first(running, "OSTROW+2001");
      holds(running.get(reference).body(), "one.ris, RIS, record 1 from line 1");
      holds(running.get(reference).body(), "Arms.");
      HttpResponse<String> draft = KeptFiles.post(running, reference + "/draft");
      assertEquals(303, draft.statusCode(), draft.body());
      String address = draft.headers().firstValue("Location").orElseThrow();
      String desk = running.get(address.substring(address.indexOf("/desk/"))).body();
      for (String text :
          List.of(
              "kell-2001-2",
              KeptFiles.TITLE,
              "Kell, Bo; Ostrow, Ina; Forearm Study Group",
              "10.5555/paper",
              "Imagined Bones",
              "44-51")) {
        assertTrue(desk.contains(text), text + " in " + desk);
      }
      assertEquals(404, running.get("/references/kept/ref-0000000000000000").statusCode());
      assertEquals(404, running.get("/references/kept/none").statusCode());
    }
  }

  @Test
  void listsAndPairsArePaged() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      StringBuilder records = new StringBuilder();
      for (int number = 0; number < 52; number++) {
        records.append(KeptFiles.twice(number));
      }
      KeptFiles.kept(running, "many.ris", records.toString());
      String first = running.get("/references/pairs").body();
      Matcher count = Pattern.compile("(\\d+) pairs are open").matcher(plain(first));
      assertTrue(count.find());
      int pages = (Integer.parseInt(count.group(1)) + 49) / 50;
      assertTrue(pages > 1, "more than a page of pairs: " + count.group());
      holds(first, "Page 1 of " + pages);
      assertEquals(50, first.split("data-pair ", -1).length - 1);
      holds(running.get("/references/pairs?page=2").body(), "Page 2 of " + pages);
      holds(running.get("/references/pairs?page=99").body(), "Page " + pages + " of " + pages);
      holds(running.get("/references/kept").body(), "Page 1 of 3");
      holds(running.get("/references/kept?q=brann&page=2").body(), "Page 2 of 3");
      holds(running.get("/references/kept?q=%22%3E%3C").body(), "0 kept references hold");
    }
  }
}
