package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PageOutputTest {
  private final PageOutput output = new PageOutput();

  private String written() {
    return new String(output.toByteArray(), StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "3 studies",
        "Zürich, 5–8 cm, ≥ 12 months",
        "a bone \uD83E\uDDB4 in a paper",
        "a long piece, longer than the short ones, whose letters are all of one byte each, and no more"
      })
  void piecesAreWrittenAsTheyAre(String piece) {
    output.writeContent("before ");
    output.writeContent(piece);
    output.writeContent("[" + piece + "]", 1, 1 + piece.length());
    assertEquals("before " + piece + piece, written());
  }

  @Test
  void aPercentSignStaysWithItsNumber() {
    output.writeContent("95 % interval");
    output.writeContent("(of which 50 % had union)", 1, 24);
    output.writeContent("width: 100%");
    assertEquals("95\u00a0% intervalof which 50\u00a0% had unionwidth: 100%", written());
  }

  @Test
  void aPageMayBeLongerThanUsual() {
    String letters = "0123456789".repeat(5);
    StringBuilder expected = new StringBuilder();
    for (int i = 0; i < 4000; i++) {
      output.writeContent(letters);
      expected.append(letters);
    }
    output.writeBinaryContent("é".getBytes(StandardCharsets.UTF_8));
    assertEquals(expected + "é", written());
  }
}
