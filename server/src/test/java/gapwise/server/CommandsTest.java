package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.server.home.Home;
import gapwise.server.testing.DamagedDatabase;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands as a person calls them. */
class CommandsTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final String PLAN =
      "{\"measure\":\"proportion\",\"source\":{\"table\":\"rows.csv\"}}";
  private static final String EVIDENCE_PLAN =
      "{\"measure\":\"proportion\",\"source\":{\"evidence\":{\"outcome\":\"union\"}}}";

  @TempDir private Path folder;

  /** What a command printed and its exit code. */
  private record Called(int exit, String out, String err) {}

  private static Called call(String... arguments) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    ByteArrayOutputStream told = new ByteArrayOutputStream();
    System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
    System.setErr(new PrintStream(told, true, StandardCharsets.UTF_8));
    try {
      int exit = Gapwise.commandLine().execute(arguments);
      return new Called(
          exit, printed.toString(StandardCharsets.UTF_8), told.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private String file(String name, String content) throws Exception {
    return Files.writeString(folder.resolve(name), content).toString();
  }

  private String plan() throws Exception {
    file("rows.csv", "study,events,total\nFirst,9,10\nSecond,17,20\nThird,12,15\n");
    return file("plan.json", PLAN);
  }

  private String home() throws Exception {
    Path workbook = folder.resolve("filled.xlsx");
    try (OutputStream target = Files.newOutputStream(workbook)) {
      Export.workbook(gapwise.server.testing.Invented.studies(), target);
    }
    String home = folder.resolve("home").toString();
    Called imported = call("import", workbook.toString(), "--home", home, "--acknowledge");
    assertEquals(0, imported.exit(), imported.err());
    assertTrue(imported.err().contains("16 studies added"), imported.err());
    return home;
  }

  @Test
  void printsWhatAnUntidySheetHolds() throws Exception {
    String sheet =
        file("series.csv", "Study,Method,n,\"Union, n/N\"\nOddfell 2012,Masquelet,12,10/12\n");
    Called read = call("read-sheet", sheet);
    assertEquals(0, read.exit(), read.err());
    JsonNode fields = MAPPER.readTree(read.out()).path("fields");
    JsonNode events = fields.get(fields.size() - 2);
    assertEquals("events", events.path("column").asText());
    assertEquals(10, events.path("value").asInt());
    assertEquals("D2", events.path("cell").asText());
    assertEquals("taken", events.path("state").asText());
  }

  @Test
  void saysOfAMappingThatItIsNone() throws Exception {
    String sheet = file("series.csv", "Study,Method,n\nOddfell 2012,Masquelet,12\n");
    Called read = call("read-sheet", sheet, "--mapping", file("mapping.json", "[1]"));
    assertEquals(2, read.exit());
    assertTrue(read.err().contains("no mapping of columns"), read.err());
  }

  @Test
  void nothingAskedIsToldTheCommands() {
    Called called = call();
    assertEquals(2, called.exit());
    assertTrue(called.err().contains("serve") && called.err().contains("run"), called.err());
  }

  @Test
  void aPlanPrintsItsResult() throws Exception {
    Called called = call("run", plan());
    assertEquals(0, called.exit(), called.err());
    JsonNode result = MAPPER.readTree(called.out());
    assertEquals(3, result.at("/data/studies").asInt());
    assertTrue(result.at("/summary/shown/estimate").asDouble() > 0.7);
  }

  @Test
  void aPlanPrintsItsMethodsInWordsInPlaceOfItsResult() throws Exception {
    Called called = call("run", "--methods", plan());
    assertEquals(0, called.exit(), called.err());
    assertTrue(
        called.out().startsWith("Methods\n\nThe data were read from a table. There were 3 rows"),
        called.out());
    Called wrong = call("run", "--methods", file("wrong.json", "{\"measure\":\"magic\"}"));
    assertEquals(2, wrong.exit());
    assertTrue(MAPPER.readTree(wrong.out()).has("problems"), wrong.out());
  }

  @Test
  void severalPlansPrintALineEachAndAWrongOneDoesNotStopTheNext() throws Exception {
    String right = plan();
    String wrong = file("wrong.json", "{\"measure\":\"magic\"}");
    Called called = call("run", right, wrong, folder.resolve("none.json").toString(), right);
    assertEquals(2, called.exit());
    List<String> lines = called.out().lines().toList();
    assertEquals(4, lines.size());
    assertTrue(MAPPER.readTree(lines.get(0)).has("summary"));
    assertTrue(MAPPER.readTree(lines.get(1)).has("problems"));
    assertTrue(MAPPER.readTree(lines.get(2)).has("problems"));
    assertEquals(lines.get(0), lines.get(3));
    assertTrue(called.err().contains("wrong.json"), called.err());
  }

  @Test
  void aPlanAboutTheEvidenceBaseIsRunAndDrawn() throws Exception {
    Path figures = folder.resolve("figures");
    Called called =
        call(
            "run",
            file("evidence.json", EVIDENCE_PLAN),
            "--home",
            home(),
            "--figures",
            figures.toString());
    assertEquals(0, called.exit(), called.err());
    assertEquals(16, MAPPER.readTree(called.out()).at("/data/studies").asInt());
    assertTrue(Files.readString(figures.resolve("evidence.svg")).contains("Alder Bay 2008"));
    assertTrue(Files.readString(figures.resolve("evidence.csv")).contains("Alder Bay 2008"));
  }

  /** Sizes of sheets: a slide of 16 to 9 is 1280 by 720, an A4 page 210 by 297 mm (ISO 216). */
  @Test
  void figuresAreDrawnForTheMediumThatIsNamed() throws Exception {
    Path slides = folder.resolve("slides");
    String plan = plan();
    Called slide = call("run", plan, "--figures", slides.toString(), "--figures-for", "slide");
    assertEquals(0, slide.exit(), slide.err());
    assertEquals(16.0 / 9, widthOverHeight(slides.resolve("plan.svg")), 0.01);
    Path pages = folder.resolve("pages");
    assertEquals(0, call("run", plan, "--figures", pages.toString(), "--figures-for", "a4").exit());
    assertEquals(210.0 / 297, widthOverHeight(pages.resolve("plan.svg")), 0.01);
    assertEquals(
        Files.readString(slides.resolve("plan.csv")),
        Files.readString(pages.resolve("plan.csv")),
        "the numbers do not depend on the medium");
  }

  private static double widthOverHeight(Path svg) throws Exception {
    Matcher box =
        Pattern.compile("viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"").matcher(Files.readString(svg));
    assertTrue(box.find(), "a drawing has its size");
    return Double.parseDouble(box.group(1)) / Double.parseDouble(box.group(2));
  }

  @Test
  void aMediumThatThereIsNotIsToldWithThoseThereAreAndNothingIsRun() throws Exception {
    Path figures = folder.resolve("figures");
    Called called = call("run", plan(), "--figures", figures.toString(), "--figures-for", "poster");
    assertEquals(2, called.exit());
    assertTrue(called.err().contains("'poster'; expected one of slide, column"), called.err());
    assertEquals("", called.out());
    assertFalse(Files.exists(figures));
  }

  @Test
  void whatIsExportedIsImportedAsUnchanged() throws Exception {
    String home = home();
    String again = folder.resolve("again.xlsx").toString();
    assertEquals(0, call("export", again, "--home", home).exit());
    Called imported = call("import", again, "--home", home, "--acknowledge");
    assertEquals(0, imported.exit(), imported.err());
    assertTrue(imported.err().contains("16 stood there already"), imported.err());
    assertEquals(2, call("export", again, "--home", home).exit(), "no file is overwritten");
  }

  @Test
  void filesOfReferencesAreReadAndHeldAgainstTheirLog() throws Exception {
    String record =
        "TY  - JOUR\nID  - %s\nAU  - Kell, Bo\nTI  - Nails for the broken forearm in children\n"
            + "JO  - Imagined Bones\nPY  - 2001\nVL  - 3\nSP  - 44\nER  - \n";
    String one = file("one.ris", String.format(record, "a"));
    String two = file("two.ris", String.format(record, "b"));
    String log =
        file(
            "log.csv",
            "database,date,words,count_reported,file\nImagined,2026-01-31,nail,2,one.ris\n"
                + "Dreamt,2026-01-31,nail,1,two.ris\n");
    Called called = call("references", one, two, "--searches", log, "--home", home());
    assertEquals(0, called.exit(), called.err());
    assertTrue(called.out().contains("one:a,two:b,same,"), called.out());
    assertTrue(called.err().contains("Imagined reported 2 records, 1 more than"), called.err());
    Called page = call("references", file("page.ris", "<html>Log in</html>"));
    assertEquals(2, page.exit());
    assertTrue(page.err().contains("a web page"), page.err());
  }

  @Test
  void keptReferencesGoThroughExportAndImport() throws Exception {
    String record =
        "TY  - JOUR\nID  - %s\nAU  - Kell, Bo\nTI  - Nails for the broken forearm in children\n"
            + "JO  - Imagined Bones\nPY  - 2001\nVL  - 3\nSP  - 44\nER  - \n";
    String one = file("kept.ris", String.format(record, "a") + String.format(record, "b"));
    String log =
        file(
            "kept-log.csv",
            "database,date,words,count_reported,file\nImagined,2026-01-31,=nail,2,kept.ris\n");
    String home = home();
    assertEquals(2, call("references", one, "--keep").exit(), "there is no place to keep it");
    Called kept =
        call("references", one, "--searches", log, "--home", home, "--keep", "--who", "AB");
    assertEquals(0, kept.exit(), kept.err());
    assertTrue(kept.err().contains("kept.ris: references new: 2"), kept.err());
    Called again = call("references", one, "--home", home, "--keep");
    assertTrue(again.err().contains("new: 0, changed: 0, kept before: 2"), again.err());
    Path tables = folder.resolve("with-references");
    Called exported = call("export", "--csv", tables.toString(), "--home", home);
    assertEquals(0, exported.exit(), exported.err());
    assertTrue(
        exported.err().contains("4 references, searches, choices and decisions"), exported.err());
    List<String> heads = Files.readAllLines(tables.resolve("history-heads.csv"));
    assertEquals("study_id,version,change,written,who,why", heads.get(0));
    assertTrue(
        heads.size() > 1 && heads.get(1).matches("[^,]+,1,\\d+,[0-9TZ:.-]+,.+"), heads.get(1));
    assertTrue(Files.readString(tables.resolve("searches.csv")).contains(",'=nail,2,kept.ris,"));
    assertTrue(
        Files.readString(tables.resolve("datapackage.json")).contains("beside-studies.jsonl"));
    String other = folder.resolve("other-home").toString();
    String lines = tables.resolve("beside-studies.jsonl").toString();
    Called moved = call("import", lines, "--home", other);
    assertEquals(0, moved.exit(), moved.err());
    assertTrue(moved.err().contains("new or changed: 4"), moved.err());
    assertTrue(call("import", lines, "--home", other).err().contains("new or changed: 0"));
    Called wrong = call("import", file("wrong.jsonl", "{\"kind\":\"study\"}\n"), "--home", other);
    assertEquals(2, wrong.exit());
    assertTrue(wrong.err().contains("wrong.jsonl, line 1"), wrong.err());
    Called workbook = call("export", folder.resolve("kept.xlsx").toString(), "--home", home);
    assertTrue(workbook.err().contains("have no place in a workbook"), workbook.err());
  }

  @Test
  void whatIsExportedAsCsvIsImportedAsUnchanged() throws Exception {
    String home = home();
    Path tables = folder.resolve("tables");
    assertEquals(0, call("export", "--csv", tables.toString(), "--home", home).exit());
    Called imported =
        call(
            "import",
            tables.resolve("studies.csv").toString(),
            tables.resolve("arms.csv").toString(),
            tables.resolve("outcomes.csv").toString(),
            tables.resolve("patients.csv").toString(),
            "--home",
            home,
            "--acknowledge");
    assertEquals(0, imported.exit(), imported.err());
    assertTrue(imported.err().contains("16 stood there already"), imported.err());
  }

  @Test
  void anOlderRecordTooLongForAWorkbookIsNamedAndNoFileIsLeft() throws Exception {
    String home = folder.resolve("old").toString();
    try (Home open = Home.open(Path.of(home), Clock.systemUTC())) {
      Study like = gapwise.server.testing.Invented.studies().get(0);
      Study old =
          Study.with("old", like.citation()).arms(like.arms()).note("n".repeat(40_000)).build();
      open.base().saveAll(List.of(old).iterator(), "reviewer", "for a test", List.of());
    }
    Path file = folder.resolve("old.xlsx");
    Called called = call("export", file.toString(), "--home", home);
    assertEquals(2, called.exit(), called.err());
    assertTrue(called.err().contains("study old, sheet studies, column note"), called.err());
    assertFalse(called.err().contains("Exception"), called.err());
    assertFalse(Files.exists(file));
    Path tables = folder.resolve("old-tables");
    assertEquals(0, call("export", "--csv", tables.toString(), "--home", home).exit());
    assertTrue(Files.readString(tables.resolve("studies.csv")).contains("n".repeat(40_000)));
  }

  @Test
  void aFileThatIsNoTemplateStoresNothing() throws Exception {
    String home = folder.resolve("empty").toString();
    Called called = call("import", file("studies.csv", "colour\nred\n"), "--home", home);
    assertEquals(2, called.exit());
    assertTrue(called.err().contains("nothing was stored"), called.err());
    assertFalse(called.err().contains("Exception"), called.err());
  }

  @Test
  void onePaperUnderTwoIdsIsAskedAboutByTheCommandToo() throws Exception {
    String home = folder.resolve("two").toString();
    String arms = file("arms.csv", "study_id,arm_id,method\nfirst,A,autograft\n");
    String header = "study_id,title,doi\n";
    String one = file("studies.csv", header + "first,Invented,10.1000/abc\n");
    assertEquals(0, call("import", one, arms, "--home", home).exit());
    assertEquals(0, call("import", one, arms, "--home", home).exit(), "the same file asks nothing");
    file("studies.csv", header + "second,Another title,https://doi.org/10.1000/ABC\n");
    file("arms.csv", "study_id,arm_id,method\nsecond,A,autograft\n");
    Called asked = call("import", one, arms, "--home", home);
    assertEquals(2, asked.exit());
    assertTrue(
        asked.err().contains("'first' may be the same paper. Both have the same DOI (10.1000/abc)"),
        asked.err());
    assertTrue(asked.err().contains("1 doubtful; nothing was stored"), asked.err());
    assertEquals(0, call("import", one, arms, "--home", home, "--acknowledge").exit());
    file("studies.csv", header + "second,Corrected title,10.1000/ABC\n");
    Called corrected = call("import", one, arms, "--home", home, "--replace");
    assertEquals(0, corrected.exit(), "acknowledged once is enough: " + corrected.err());
    assertTrue(corrected.err().contains("1 study added or changed"), corrected.err());
  }

  @Test
  void aChangedStudyIsPrintedFieldByFieldAndReplacedOnlyWhereThatIsSaid() throws Exception {
    String home = folder.resolve("changed").toString();
    String arms = file("arms.csv", "study_id,arm_id,method\na,A,autograft\nb,A,autograft\n");
    String one = file("studies.csv", "study_id,title\na,Quiet roads\nb,Old bridges\n");
    assertEquals(0, call("import", one, arms, "--home", home, "--who", "AB").exit());
    file("studies.csv", "study_id,title\na,Loud roads\nb,New bridges\n");
    String changes = folder.resolve("changes.csv").toString();
    Called asked = call("import", one, arms, "--home", home, "--changes", changes);
    assertEquals(2, asked.exit());
    assertTrue(asked.err().contains("Stands with other content: a (version 1, "), asked.err());
    assertTrue(
        asked.err().contains("studies, Title: 'Quiet roads' here, 'Loud roads' in the file"),
        asked.err());
    assertTrue(
        asked.err().contains("2 studies stand here with other content; nothing was stored."),
        asked.err());
    assertEquals(
        "study_id,sheet,row,column,before,after\r\n"
            + "a,studies,,title,Quiet roads,Loud roads\r\n"
            + "b,studies,,title,Old bridges,New bridges\r\n",
        Files.readString(Path.of(changes)));
    Called some = call("import", one, arms, "--home", home, "--replace-study", "a");
    assertEquals(2, some.exit());
    assertTrue(some.err().contains("1 study stands here with other content"), some.err());
    Called kept = call("import", one, arms, "--home", home, "--replace-study", "a", "--keep");
    assertEquals(0, kept.exit(), kept.err());
    assertTrue(kept.err().contains("1 study added or changed"), kept.err());
    assertTrue(kept.err().contains("1 study left alone"), kept.err());
    Called all = call("import", one, arms, "--home", home, "--replace");
    assertEquals(0, all.exit(), all.err());
    assertTrue(all.err().contains("Replaced: b (version 1, "), all.err());
    assertTrue(all.err().contains("1 stood there already"), all.err());
  }

  @Test
  void whatAnImportFindsIsPrintedByKindTheWrongFirstWithTheStudyOfEachPlace() throws Exception {
    String studies =
        file("studies.csv", "study_id,title\nfirst,Invented\nsecond,Invented too\nthird,More\n");
    String arms =
        file(
            "arms.csv",
            "study_id,arm_id,method,age_mean,lost_to_follow_up\n"
                + "first,A,autograft,12,\nsecond,A,autograft,40,-3\nthird,A,autograft,11,\n");
    Called called = call("import", studies, arms, "--home", folder.resolve("kinds").toString());
    assertEquals(2, called.exit());
    List<String> lines = called.err().lines().toList();
    int wrong =
        lines.indexOf("Wrong: A number cannot be, by itself or beside another of its row. (1)");
    int doubtful = lines.indexOf("Doubtful: An age is unusual in such studies. (2)");
    assertTrue(wrong >= 0 && doubtful == wrong + 2, called.err());
    assertTrue(
        lines
            .get(wrong + 1)
            .startsWith("  second, sheet arms, row 3, column E (lost_to_follow_up)"),
        called.err());
    assertTrue(lines.get(doubtful + 1).startsWith("  first, sheet arms, row 2"), called.err());
    assertTrue(lines.get(doubtful + 2).startsWith("  third, sheet arms, row 4"), called.err());
    assertTrue(lines.contains("1 wrong; nothing was stored."), called.err());
  }

  @Test
  void anIndexIsBuiltAnewAndABackupIsNeverOverwritten() throws Exception {
    String home = home();
    assertEquals(0, call("reindex", "--home", home).exit());
    String copy = folder.resolve("copy.db").toString();
    assertEquals(0, call("backup", copy, "--home", home).exit());
    assertEquals(2, call("backup", copy, "--home", home).exit());
  }

  @Test
  void aFolderThatIsNoHomeIsRefusedByCommandsThatNeedOneAndNothingIsMade() throws Exception {
    String mistyped = folder.resolve("hmoe").toString();
    String plan = file("evidence.json", EVIDENCE_PLAN);
    String target = folder.resolve("out.xlsx").toString();
    List<List<String>> commands =
        List.of(
            List.of("backup", target, "--home", mistyped),
            List.of("export", target, "--home", mistyped),
            List.of("overlaps", "--home", mistyped),
            List.of("reindex", "--home", mistyped),
            List.of("run", plan, "--home", mistyped));
    for (List<String> command : commands) {
      Called called = call(command.toArray(String[]::new));
      assertEquals(1, called.exit(), command + called.err());
      assertTrue(called.err().contains("no evidence base in this folder"), called.err());
      assertFalse(Files.exists(Path.of(mistyped)), command::toString);
      assertFalse(Files.exists(Path.of(target)), command::toString);
    }
  }

  @Test
  void aBackupIsMadeWhileTheHomeIsInUseButNothingIsRestoredIntoIt() throws Exception {
    String home = home();
    String copy = folder.resolve("copy.db").toString();
    try (Home open = Home.open(Path.of(home), Clock.systemUTC())) {
      Called made = call("backup", copy, "--home", home);
      assertEquals(0, made.exit(), made.err());
      // Sixteen studies and the record of their import.
      assertTrue(made.err().contains("17 versions"), made.err());
      Called refused = call("restore", copy, "--home", home);
      assertEquals(1, refused.exit());
      assertTrue(refused.err().contains("has this home open"), refused.err());
      assertEquals(17, open.base().lastChange());
    }
  }

  @Test
  void aBackupIsRestoredIntoANewFolderAndIntoTheOldOneAndSearchedThere() throws Exception {
    String home = home();
    String copy = folder.resolve("copy.db").toString();
    assertEquals(0, call("backup", copy, "--home", home).exit());
    String fresh = folder.resolve("fresh").toString();
    assertEquals(0, call("restore", copy, "--home", fresh).exit());
    Called run = call("run", file("evidence.json", EVIDENCE_PLAN), "--home", fresh);
    assertEquals(16, MAPPER.readTree(run.out()).at("/data/studies").asInt(), run.err());
    Called again = call("restore", copy, "--home", home);
    assertEquals(0, again.exit(), again.err());
    assertTrue(again.err().contains("gapwise.db.replaced-"), again.err());
    Called exported = call("export", folder.resolve("all.xlsx").toString(), "--home", home);
    assertTrue(exported.err().contains("16 studies written"), exported.err());
  }

  @Test
  void aHomeWithADamagedRecordGivesNoBackupAndTellsWhich() throws Exception {
    String home = home();
    String damaged = gapwise.server.testing.Invented.studies().get(3).id();
    DamagedDatabase.changeLetterIn(Path.of(home), damaged + "\",\"citation\"");
    Path copy = folder.resolve("copy.db");
    Called refused = call("backup", copy.toString(), "--home", home);
    assertEquals(1, refused.exit());
    assertTrue(refused.err().contains("1 record is damaged: study " + damaged), refused.err());
    assertFalse(Files.exists(copy));
    Path all = folder.resolve("all.xlsx");
    Called exported = call("export", all.toString(), "--home", home);
    assertEquals(1, exported.exit());
    assertTrue(exported.err().contains("This record is damaged"), exported.err());
    assertFalse(exported.err().contains("\tat "), exported.err());
    assertFalse(Files.exists(all));
  }

  @Test
  void anIndexFolderThatCannotBeOneIsToldWithoutATrace() throws Exception {
    String home = home();
    Path index = Path.of(home, "index");
    Files.createFile(index);
    Called called = call("reindex", "--home", home);
    assertEquals(1, called.exit());
    assertTrue(called.err().contains("is in the way; move it somewhere else"), called.err());
    assertFalse(called.err().contains("\tat "), called.err());
  }

  @Test
  void whatIsExportedAndBackedUpIsItsOwnersAlone() throws Exception {
    assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    String home = home();
    Path copy = folder.resolve("copy.db");
    Path all = folder.resolve("all.xlsx");
    assertEquals(0, call("backup", copy.toString(), "--home", home).exit());
    assertEquals(0, call("export", all.toString(), "--home", home).exit());
    for (Path file : List.of(copy, all)) {
      assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }
  }
}
