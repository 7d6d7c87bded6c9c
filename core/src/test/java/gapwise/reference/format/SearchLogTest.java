package gapwise.reference.format;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Logs of searches invented here. */
class SearchLogTest {
  private static FileAnswer file(String name, int read, int refused) {
    return new FileAnswer(name, Optional.of(Format.RIS), "UTF-8", read, 0, refused, List.of());
  }

  @Test
  void countsAreHeldAgainstFiles() throws IOException {
    List<SearchDone> log =
        SearchLog.read(
            ReferenceFile.of(
                "log.csv",
                "\uFEFFDatabase;Date;Query;Hits;File;Who\n"
                    + "Imagined Index;2026-01-31;\"gap; shin\";1,204;a.ris;B. Kell\n"
                    + "Dreamt Records;2026-02-01;gap;7;b.ris;\n"));
    assertEquals(1204, log.get(0).count().orElseThrow());
    assertEquals("gap; shin", log.get(0).words());
    List<String> told =
        SearchDone.heldAgainst(
            log, List.of(file("a.ris", 1_190, 2), file("b.ris", 7, 0), file("c.ris", 1, 0)));
    assertEquals(2, told.size(), told.toString());
    assertTrue(
        told.get(0)
            .contains("Imagined Index reported 1,204 records, 12 more than the file a.ris holds"),
        told.get(0));
    assertTrue(told.get(1).contains("c.ris is of no search"), told.get(1));
  }

  @Test
  void whatIsWrongIsToldByRowAndColumn() {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class,
            () ->
                SearchLog.read(
                    ReferenceFile.of(
                        "log.csv",
                        "database,date,words,count_reported\n"
                            + ",2026-01-31,x,5\n"
                            + "Index,31.1.26,x,5\n"
                            + "Index,2026-01-31,x,about 5\n")));
    assertEquals(3, wrong.problems().size(), wrong.problems().toString());
    assertTrue(
        wrong.problems().get(1).line().contains("row 3, column date"), wrong.problems().toString());
  }

  @Test
  void aMissingColumnIsNamedWithItsOtherWords() {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class,
            () ->
                SearchLog.read(
                    ReferenceFile.of("log.csv", "database,date,words\nIndex,2026-01-31,x\n")));
    assertTrue(
        wrong.problems().get(0).message().contains("count_reported or count"),
        wrong.problems().toString());
  }

  @Test
  void aLogThatIsWrittenIsReadBack() throws IOException {
    List<SearchDone> searches =
        List.of(
            new SearchDone(
                "Imagined, \"Index\"",
                LocalDate.of(2031, 2, 3),
                "=wax* AND\n(gap OR limb)",
                OptionalInt.of(1204),
                Optional.of("one.ris"),
                Optional.of("-1990 to 2030"),
                Optional.of("AB")),
            new SearchDone(
                "Dreamt",
                LocalDate.of(2031, 2, 4),
                "wax",
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    StringBuilder table = new StringBuilder();
    SearchLogCsv.write(searches, table);
    assertTrue(table.toString().contains("'=wax*"), table.toString());
    assertEquals(searches, SearchLog.read(ReferenceFile.of("log.csv", table.toString())));
  }
}
