package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that lists pairs, on two invented studies of one hospital. */
class OverlapsCommandTest {
  private static String printed(String... arguments) {
    PrintStream out = System.out;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
    try {
      assertEquals(0, Gapwise.commandLine().execute(arguments));
    } finally {
      System.setOut(out);
    }
    return printed.toString(StandardCharsets.UTF_8);
  }

  @Test
  void pairsAreListedWithReasonsOrAsCsv(@TempDir Path folder) throws Exception {
    Path studies = folder.resolve("studies.csv");
    Files.write(
        studies,
        List.of(
            "study_id,title,authors,year,centres,recruitment_from,recruitment_to",
            "one,Invented series,Abbard A; Beffling B,2012,Drobba Clinic,2003,2009",
            "two,Another series,Beffling B; Abbard A,2015,Clinic of Drobba,2005,2012"));
    Path arms = folder.resolve("arms.csv");
    Files.write(
        arms,
        List.of("study_id,arm_id,method,patients", "one,A,autograft,20", "two,A,autograft,31"));
    String home = folder.resolve("home").toString();
    printed("import", studies.toString(), arms.toString(), "--home", home, "--acknowledge");
    List<String> lines = printed("overlaps", "--home", home).lines().toList();
    assertEquals("one and two: overlapping", lines.get(0));
    assertTrue(lines.contains("  for      Both come from Drobba Clinic."), lines.toString());
    assertEquals(
        List.of("a,b,verdict", "one,two,overlapping"),
        printed("overlaps", "--home", home, "--csv").lines().toList());
  }
}
