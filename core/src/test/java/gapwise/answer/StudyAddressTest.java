package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StudyAddressTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "example2015",
        "../x",
        "a/b",
        "a b",
        "%2e",
        "<b>",
        ".",
        "..",
        "...",
        "\u00e9",
        "a?b",
        "a#b",
        "a;b",
        "a&b=c",
        "a+b",
        "template.xlsx",
        "\ud83e\uddb4",
        "a%2Fb",
        "history",
        "\"q",
        "~",
        "a~2Eb",
        "\\x"
      })
  void everyIdHasAnAddressThatNoBrowserChangesAndThatLeadsBack(String id) {
    String path = StudyAddress.of(id);
    // RFC 3986, sections 2.3 and 5.2.4: unreserved letters, and no segment of dots alone.
    assertTrue(path.matches("/studies/[A-Za-z0-9._~-]+"), path);
    assertEquals(path, URI.create("http://host/studies").resolve(path).normalize().getPath());
    assertEquals(id, StudyAddress.id(path.substring("/studies/".length())));
  }

  @Test
  void anIdOfUsualLettersStandsAsItIs() {
    assertEquals("/studies/Example_2015-b.1", StudyAddress.of("Example_2015-b.1"));
  }

  @Test
  void aTildeThatStandsForNoLetterIsItself() {
    assertEquals("a~zz", StudyAddress.id("a~zz"));
  }
}
