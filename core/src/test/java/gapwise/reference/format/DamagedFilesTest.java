package gapwise.reference.format;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.reference.Author;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that are wrong or only unusual, as a whole or in one record; all of it invented. */
class DamagedFilesTest {
  private static final String GOOD =
      "TY  - JOUR\n"
          + "ID  - a\n"
          + "AU  - Kell, Bo\n"
          + "TI  - Nails for the broken forearm\n"
          + "PY  - 2001\n"
          + "ER  - \n";

  private final List<ReadRecord> records = new ArrayList<>();

  private FileAnswer read(String name, byte[] bytes) throws IOException {
    records.clear();
    return ReferenceReader.read(ReferenceFile.of(name, bytes), records::add);
  }

  private FileAnswer read(String text) throws IOException {
    return read("file.txt", text.getBytes(StandardCharsets.UTF_8));
  }

  private ReadRecord.Read good(int at) {
    return (ReadRecord.Read) records.get(at);
  }

  private String said(int at) {
    return records.get(at).problems().toString();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "  \n\n ",
        "%PDF-1.7 x",
        "<!DOCTYPE html><html><body>Log in</body></html>",
        "<?xml version=\"1.0\"?><records><record/></records>",
        "{\\rtf1 text}",
        "author,title,year,journal\nKell,Nails,2001,Bones\n",
        "1. Bones. 2001;3:4.\n\nNails.\n\nKell B.\n\nPMID: 90000001\n",
        "Dear colleague,\nhere are the references.\n",
        "PK\u0003\u0004xxxx"
      })
  void whatIsNoFileOfReferencesIsToldAndNothingIsRead(String text) throws IOException {
    FileAnswer answer = read(text);
    assertEquals(0, answer.records());
    assertEquals(1, answer.problems().size(), answer.toString());
    assertTrue(answer.problems().get(0).message().matches("(?s).*(xport|unpack|save|The file).*"));
  }

  @Test
  void compressedBytesAreNoText() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream zip = new GZIPOutputStream(bytes)) {
      zip.write(GOOD.getBytes(StandardCharsets.UTF_8));
    }
    assertTrue(read("a.ris", bytes.toByteArray()).problems().toString().contains("compressed"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "UTF-16", "windows-1252", "ISO-8859-1"})
  void everyEncodingGivesTheSameName(String charset) throws IOException {
    String name = "M\u00fc\u00dfigk\u00e4";
    String text = GOOD.replace("Kell", name) + GOOD.replace("Kell", name);
    FileAnswer answer = read("a.ris", text.getBytes(Charset.forName(charset)));
    assertEquals(2, answer.read());
    assertEquals(
        new Author.Person("", "M\u00fc\u00dfigk\u00e4", "Bo", ""),
        good(0).reference().authors().get(0));
    boolean guessed = charset.startsWith("w") || charset.startsWith("I");
    assertEquals(guessed ? 1 : 0, answer.problems().size(), answer.toString());
  }

  @Test
  void aMarkAtTheStartAndOldLineEndsAreNothingToSpeakOf() throws IOException {
    FileAnswer answer = read("\uFEFF" + GOOD.replace("\n", "\r"));
    assertEquals(1, answer.read());
    assertTrue(answer.problems().isEmpty());
    assertTrue(said(0).equals("[]"), said(0));
  }

  @Test
  void theNameOfTheFileDoesNotDecide() throws IOException {
    FileAnswer answer = read("a.json", GOOD.getBytes(StandardCharsets.UTF_8));
    assertEquals(Format.RIS, answer.format().orElseThrow());
    assertTrue(answer.problems().get(0).message().contains("promises CSL-JSON"));
  }

  @Test
  void aRecordWithoutEndIsEndedWhereTheNextStarts() throws IOException {
    FileAnswer answer = read(GOOD.replace("ER  - \n", "") + GOOD);
    assertEquals(2, answer.read());
    assertTrue(said(0).contains("no ER"));
    assertEquals("[]", said(1));
  }

  @Test
  void aRecordOfRisWithoutTitleIsRefusedWithItsPlace() throws IOException {
    read(GOOD + GOOD.replace("TI  - Nails for the broken forearm\n", ""));
    assertTrue(records.get(1) instanceof ReadRecord.Refused);
    assertTrue(said(1).contains("record 2, line 7, a"), said(1));
  }

  @Test
  void linesWithoutTagBelongToTheFieldAbove() throws IOException {
    read(GOOD.replace("PY", "AB  - One line\nand another - so they say\nPY"));
    assertEquals("One line and another - so they say", good(0).reference().summary().orElseThrow());
    assertEquals("[]", said(0));
  }

  @Test
  void severalAuthorsInOneLineAndNoCommaAreRead() throws IOException {
    read(
        GOOD.replace(
            "AU  - Kell, Bo", "AU  - Kell, Bo; Ostrow, Ina\nAU  - Imagined Bone Study Group"));
    assertEquals(
        List.of(
            new Author.Person("", "Kell", "Bo", ""),
            new Author.Person("", "Ostrow", "Ina", ""),
            new Author.Group("Imagined Bone Study Group")),
        good(0).reference().authors());
  }

  @Test
  void unknownTagsAreKept() throws IOException {
    read(GOOD.replace("PY", "ZZ  - what it may mean\nPY"));
    assertTrue(good(0).reference().others().toString().contains("what it may mean"));
    assertEquals("[]", said(0));
  }

  @Test
  void numbersAreFoundWhereTheyStand() throws IOException {
    read(
        GOOD.replace(
            "PY",
            "UR  - https://doi.org/10.5555/AB%2F12\n"
                + "UR  - https://pubmed.ncbi.nlm.nih.gov/90000001/\n"
                + "C2  - PMC1234567\n"
                + "SP  - 1095\n"
                + "EP  - 103\n"
                + "PY"));
    assertEquals("10.5555/ab/12", good(0).reference().identifiers().doi().orElseThrow());
    assertEquals("90000001", good(0).reference().identifiers().pmid().orElseThrow());
    assertEquals("PMC1234567", good(0).reference().identifiers().pmcid().orElseThrow());
    assertEquals("1095-1103", good(0).reference().published().pages().orElseThrow());
  }

  @Test
  void aNumberOfAnotherDatabaseIsNoPubMedNumber() throws IOException {
    read(GOOD.replace("PY", "AN  - 12345678\nDB  - Imagined Index\nPY"));
    assertTrue(good(0).reference().identifiers().pmid().isEmpty());
    assertTrue(good(0).reference().others().toString().contains("12345678"));
  }

  @Test
  void anAbstractOfTwentyMegabytesIsShortenedInEveryFormat() throws IOException {
    String giant = "long {story} ".repeat(1_700_000);
    for (String text :
        List.of(
            GOOD.replace("PY", "AB  - " + giant + "\nPY") + GOOD,
            "@article{a, title = {Nails}, abstract = {"
                + giant
                + "}, year = 2001}\n@article{b, title = {Pins}, year = 2002}\n",
            "[{\"id\":\"a\",\"title\":\"Nails\",\"abstract\":\""
                + giant
                + "\",\"issued\":{\"date-parts\":[[2001]]}},{\"id\":\"b\",\"title\":\"Pins\",\"issued\":{\"date-parts\":[[2002]]}}]",
            "PMID- 90000001\nTI  - Nails\nDP  - 2001\nAB  - "
                + giant
                + "\nSO  - x\n\nPMID- 90000002\nTI  - Pins\nDP  - 2002\nSO  - x\n")) {
      FileAnswer answer = read(text);
      assertEquals(2, answer.read(), text.substring(0, 60));
      assertTrue(good(0).reference().summary().orElseThrow().length() <= Limits.FIELD);
      assertTrue(said(0).contains("longer than 100,000 letters"), said(0));
      assertEquals(2001, good(0).reference().published().year().orElseThrow());
      assertEquals("[]", said(1));
    }
  }

  @Test
  void aBraceThatIsNotClosedCostsOneEntry() throws IOException {
    FileAnswer answer =
        read(
            "@article{a, title = {Nails, year = 2001}\n\n"
                + "@article{b, title = {Pins}, year = 2002}\n");
    assertEquals(1, answer.read());
    assertEquals(1, answer.refused());
    assertTrue(said(0).contains("not closed"));
  }

  @Test
  void aBraceTooManyAndAMissingCommaAreTold() throws IOException {
    FileAnswer answer =
        read(
            "@article{a, title = {Nails} year = 2001,\n"
                + " pages = {1--9}}\n"
                + "@article{b, title = {Pins}}, year = 2002}\n"
                + "@book{c, title = \"Screws\", year = 1999}");
    assertEquals(3, answer.read(), records.toString());
    assertTrue(said(0).contains("comma is missing"), said(0));
    assertEquals(2001, good(0).reference().published().year().orElseThrow());
    assertTrue(good(1).isDoubtful());
    assertFalse(good(2).isDoubtful());
  }

  @Test
  void texIsReadAsPrinted() throws IOException {
    read(
        "@article{a, title = {{\\'E}tude of $\\alpha$-{TCP} \\& {\\ss} in the \\textit{Mus} -- a"
            + " \\c{c}\\\"{o}\\v{s}\\i}, author = {J{\\\"o}rg van den {\\O}st and {\\L}uk\\'a\\v{s}"
            + " {\\AA}s and {The {Bone} Group} and de la Fuente, Jos{\\'e} Mar\\'{\\i}a}, year ="
            + " 2001}");
    assertEquals(
        "\u00c9tude of \u03b1-TCP & \u00df in the Mus \u2013 a \u00e7\u00f6\u0161\u0131",
        good(0).reference().titles().main());
    assertEquals(
        List.of(
            new Author.Person("van den", "\u00d8st", "J\u00f6rg", ""),
            new Author.Person("", "\u00c5s", "\u0141uk\u00e1\u0161", ""),
            new Author.Group("The Bone Group"),
            new Author.Person("de la", "Fuente", "Jos\u00e9 Mar\u00eda", "")),
        good(0).reference().authors());
  }

  @Test
  void oneDamagedItemOfJsonCostsItself() throws IOException {
    FileAnswer answer =
        read(
            "[\n"
                + "{\"id\": 1, \"title\": \"Nails\", \"issued\": {\"date-parts\": [[\"2001\"]]}},\n"
                + "{\"id\": 2, \"title\": \"Pins, \n"
                + "\"volume\": 3},\n"
                + "{\"id\": 3 \"title\": \"Screws\"},\n"
                + "null,\n"
                + "{\"id\": 5, \"title\": \"Wires\", \"issued\": {\"raw\": \"May 1999\"}}\n"
                + "]");
    assertEquals(2, answer.read(), records.toString());
    assertEquals(3, answer.refused());
    assertTrue(said(2).contains("line 5"), said(2));
    assertEquals(1999, good(4).reference().published().year().orElseThrow());
  }

  @Test
  void anItemThatIsNotClosedDoesNotSwallowTheNext() throws IOException {
    FileAnswer answer =
        read(
            "[\n"
                + "{\n"
                + "  \"id\": \"a\",\n"
                + "  \"title\": \"Nails\",\n"
                + "  \"author\": [\n"
                + "    {\"family\": \"Kell\"\n"
                + "  ]\n"
                + ",\n"
                + "{\n"
                + "  \"id\": \"b\",\n"
                + "  \"title\": \"Pins\"\n"
                + "}\n"
                + "]");
    assertEquals(1, answer.read(), records.toString());
    assertEquals(1, answer.refused());
  }

  @Test
  void aListThatIsCutOffIsTold() throws IOException {
    FileAnswer answer = read("[{\"id\":\"a\",\"title\":\"Nails\"},{\"id\":\"b\",\"tit");
    assertEquals(1, answer.read());
    assertTrue(answer.problems().toString().contains("cut off"));
  }

  @Test
  void medlineWithoutFullNamesTakesTheShortOnes() throws IOException {
    read(
        "PMID- 90000001\n"
            + "TI  - [Nagelung des Unterarms].\n"
            + "TT  - Nagelung.\n"
            + "DP  - 2001 Winter\n"
            + "AU  - van der Kell BO Jr\n"
            + "FAU - Ostrow, Ina\n"
            + "AU  - Ostrow I\n"
            + "CN  - Imagined Group\n"
            + "PG  - 123-8\n"
            + "LID - 10.5555/a [doi]\n"
            + "AID - S1 [pii]\n"
            + "SO  - x\n");
    assertEquals(
        List.of(
            new Author.Person("van der", "Kell", "BO", "Jr"),
            new Author.Person("", "Ostrow", "Ina", ""),
            new Author.Group("Imagined Group")),
        good(0).reference().authors());
    assertEquals("[Nagelung des Unterarms]", good(0).reference().titles().main());
    assertEquals("123-128", good(0).reference().published().pages().orElseThrow());
    assertEquals("10.5555/a", good(0).reference().identifiers().doi().orElseThrow());
    assertEquals(2001, good(0).reference().published().year().orElseThrow());
  }

  @Test
  void oneBadByteIsNamedAndTheOtherAccentsStay() throws IOException {
    String text =
        GOOD.replace("Kell", "\u0158ezn\u00ed\u010dek\u00e4") + GOOD.replace("Kell", "Ma?ek");
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    for (int at = 0; at < bytes.length; at++) {
      bytes[at] = bytes[at] == '?' ? (byte) 0xe4 : bytes[at];
    }
    FileAnswer answer = read("a.ris", bytes);
    assertEquals("[]", answer.problems().toString());
    assertTrue(said(1).contains("the byte E4, which is not UTF-8, in line 9"), said(1));
    assertTrue(good(1).reference().authors().toString().contains("Ma\u00e4ek"));
  }

  @Test
  void notesNameOtherPapers() throws IOException {
    read(
        GOOD.replace(
            "PY",
            "N1  - Erratum in: Imagin Bones. 2002;3:4. doi: 10.5555/e.1. Comment in: Imagin Bones."
                + " 2003;4:5.\n"
                + "PY"));
    assertEquals(2, good(0).reference().links().size());
    assertEquals("10.5555/e.1", good(0).reference().links().get(0).doi().orElseThrow());
    assertTrue(
        good(0).reference().identifiers().doi().isEmpty(),
        "the DOI of a notice is not that of the paper");
  }
}
