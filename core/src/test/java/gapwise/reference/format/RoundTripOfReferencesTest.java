package gapwise.reference.format;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.reference.Author;
import gapwise.reference.Reference;
import gapwise.reference.testing.InventedSearches;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is written is read back as it was. */
class RoundTripOfReferencesTest {
  private static List<Reference> read(String text) throws IOException {
    List<Reference> references = new ArrayList<>();
    ReferenceReader.read(
        ReferenceFile.of("file.txt", text),
        record -> {
          if (record instanceof ReadRecord.Read read) {
            references.add(read.reference());
          }
        });
    return references;
  }

  @Test
  void risAndCslGiveBackPeopleTitlesPlacesAndNumbers() throws IOException {
    for (String text : new InventedSearches(120, 3).texts()) {
      List<Reference> references = read(text);
      StringWriter ris = new StringWriter();
      RisWriter.write(references, ris);
      same(references, read(ris.toString()));
      StringWriter csl = new StringWriter();
      CslWriter.write(references, csl);
      same(references, read(csl.toString()));
    }
  }

  private static void same(List<Reference> before, List<Reference> after) {
    assertEquals(before.size(), after.size());
    for (int at = 0; at < before.size(); at++) {
      Reference one = before.get(at);
      Reference two = after.get(at);
      assertEquals(one.id(), two.id());
      assertEquals(one.kind(), two.kind());
      assertEquals(one.titles(), two.titles());
      assertEquals(one.authors(), two.authors());
      assertEquals(one.identifiers(), two.identifiers());
      assertEquals(one.published().year(), two.published().year());
      assertEquals(one.published().journal(), two.published().journal());
      assertEquals(one.published().volume(), two.published().volume());
      assertEquals(one.published().pages(), two.published().pages());
    }
  }

  @Test
  void linksNotesAndUnknownFieldsComeBack() throws IOException {
    List<Reference> references =
        read(
            "PMID- 90000001\n"
                + "TI  - Nails\n"
                + "DP  - 2001 May\n"
                + "RIN - Imagin Bones. 2002;3:4. doi: 10.5555/r\n"
                + "ZZZ - kept\n"
                + "SO  - x\n");
    StringWriter ris = new StringWriter();
    RisWriter.write(references, ris);
    StringWriter csl = new StringWriter();
    CslWriter.write(references, csl);
    for (String text : List.of(ris.toString(), csl.toString())) {
      Reference back = read(text).get(0);
      assertEquals(references.get(0).links(), back.links(), text);
      assertEquals(true, back.others().toString().contains("kept"), text);
    }
  }

  @Test
  void namesWithoutAllOfTheirPartsComeBack() throws IOException {
    List<Author> authors =
        List.of(
            new Author.Person("van den", "Ostrow", "", ""),
            new Author.Person("", "Kell", "", "Jr"),
            new Author.Person("", "Kell", "", "PhD"),
            new Author.Person("de", "Brann", "Odo M.", "III"),
            new Author.Group("Forearm Study Group"));
    Reference plain = read("TY  - JOUR\nTI  - Wax\nPY  - 2001\nER  - \n").get(0);
    Reference one =
        new Reference(
            plain.id(),
            plain.kind(),
            plain.kindsPrinted(),
            plain.titles(),
            authors,
            plain.published(),
            plain.identifiers(),
            plain.summary(),
            plain.keywords(),
            plain.language(),
            plain.links(),
            plain.others());
    StringWriter ris = new StringWriter();
    RisWriter.write(List.of(one), ris);
    assertEquals(authors, read(ris.toString()).get(0).authors());
    StringWriter csl = new StringWriter();
    CslWriter.write(List.of(one), csl);
    assertEquals(authors, read(csl.toString()).get(0).authors());
  }
}
