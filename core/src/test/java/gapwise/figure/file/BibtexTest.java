package gapwise.figure.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.Reference;
import gapwise.reference.Author;
import gapwise.reference.format.ReadRecord;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Citations as BibTeX are read back as they were; all of them are invented. */
class BibtexTest {
  private static final Reference ODD =
      new Reference(
          "Invented 1",
          "Sedge A, Fen C Jr, Sedge Study Group. 50 % & more {of} bone_gaps #1. 2019.",
          "50 % & more {of} bone_gaps #1",
          List.of(
              new Reference.Author("Sedge", "A", ""),
              new Reference.Author("Fen", "Cor", "Jr"),
              new Reference.Author("Sedge Study Group", "", "", true)),
          OptionalInt.of(2019),
          "Invented Journal of Bones & Joints",
          "12",
          "3",
          "11-19",
          "10.0000/nowhere_1",
          "",
          true);

  private static List<gapwise.reference.Reference> read(String text) throws IOException {
    List<gapwise.reference.Reference> back = new ArrayList<>();
    ReferenceReader.read(
        ReferenceFile.of("citations.bib", text),
        record -> back.add(((ReadRecord.Read) record).reference()));
    return back;
  }

  @Test
  void signsOfTexAndPeopleComeBackAsTheyWere() throws IOException {
    String text = new References(List.of(ODD, ODD)).bibtex();
    List<gapwise.reference.Reference> back = read(text);
    assertEquals(2, back.size(), text);
    assertEquals(ODD.title(), back.get(0).titles().main(), text);
    assertEquals(
        List.of(
            new Author.Person("", "Sedge", "A", ""),
            new Author.Person("", "Fen", "Cor", "Jr"),
            new Author.Group("Sedge Study Group")),
        back.get(0).authors());
    assertTrue(text.contains("@article{invented-1,") && text.contains("@article{invented-1-2,"));
    assertTrue(text.contains("doi = {10.0000/nowhere\\_1}"), text);
    assertTrue(text.contains("pages = {11--19}"), text);
    assertTrue(text.contains("note = {Invented"), text);
  }
}
