package gapwise.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DoiTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "10.1000/182",
        "https://doi.org/10.1000/182",
        "http://dx.doi.org/10.1000/182",
        "HTTPS://DOI.ORG/10.1000/182",
        "doi.org/10.1000/182",
        "www.doi.org/10.1000/182",
        "doi:10.1000/182",
        "DOI: 10.1000/182",
        "doi 10.1000/182",
        "doi:https://doi.org/10.1000/182",
      })
  void whatPeopleCopyWithADoiIsLeftAway(String text) {
    assertEquals("10.1000/182", Doi.bare(text));
  }

  @Test
  void anythingElseStaysAsItIsWritten() {
    for (String text : new String[] {"https://example.org/10.1000/182", "doi", "11.1000/1", "x"}) {
      assertEquals(text, Doi.bare(text));
    }
  }
}
