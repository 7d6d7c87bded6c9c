package gapwise.server.page.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.account.Role;
import gapwise.server.page.reference.KeptFiles;
import gapwise.server.testing.RunningServer;
import gapwise.server.testing.Team;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * That two people do not see each other's choice rests on their accounts, not on what they type.
 */
@Timeout(120)
class ScreeningByAccountTest {
  private static final Pattern PAPER =
      Pattern.compile("name=\"paper\" value=\"(ref-[0-9a-f]{16})\"");

  @TempDir Path folder;

  private static String plain(HttpResponse<String> page) {
    return page.body().replaceAll("<[^>]+>", " ").replaceAll("\\s+", " ");
  }

  @Test
  void nobodyReadsOrChoosesInTheNameOfAnother() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      KeptFiles.kept(running, "four.ris", KeptFiles.twice(0) + KeptFiles.twice(1));
      Team team = new Team(running);
      String eddo = team.session(team.of(Role.EXTRACTOR));
      String ines = team.session(team.add("Ines", Role.EXTRACTOR));
      Matcher found = PAPER.matcher(team.get("/screening/read", eddo).body());
      assertTrue(found.find());
      String paper = found.group(1);

      assertEquals(303, choose(team, eddo, paper, "exclude", "Ines").statusCode());
      String read = "/screening/read?stage=title&paper=" + paper;
      String asInes = plain(team.get(read + "&who=Eddo", ines));
      assertTrue(asInes.contains("Ines reads."), asInes);
      assertFalse(asInes.contains("your choice so far"), "Ines sees nothing of what Eddo chose");
      assertTrue(plain(team.get(read, eddo)).contains("Leave out (your choice so far)"));
      assertEquals(403, team.get("/screening/apart", ines).statusCode());

      assertEquals(303, choose(team, ines, paper, "keep", "Eddo").statusCode());
      String adele = team.session(team.of(Role.ADJUDICATOR));
      String apart = plain(team.get("/screening/apart", adele));
      assertTrue(
          apart.contains("Eddo Leave out Ines Keep") || apart.contains("Ines Keep Eddo Leave out"),
          apart);
      String overview = team.get("/screening", ines).body();
      assertTrue(overview.contains(">Ines</a>") && !overview.contains(">Eddo</a>"), overview);
    }
  }

  private static HttpResponse<String> choose(
      Team team, String session, String paper, String choice, String who) throws Exception {
    return team.post(
        "/screening/read", session, "stage", "title", "paper", paper, "choose", choice, "who", who);
  }
}
