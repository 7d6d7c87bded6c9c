package gapwise.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a piece of markup ends follows XML 1.0, sections 2.4 to 2.7. */
class MarkupGuardTest {
  private static final String HALF = "x".repeat(MarkupGuard.LONGEST_PIECE / 2);

  private static int read(String markup) throws IOException {
    byte[] bytes = markup.getBytes(StandardCharsets.UTF_8);
    return new MarkupGuard(new ByteArrayInputStream(bytes)).readAllBytes().length;
  }

  @Test
  void manyPiecesThatAreEachShortPassAsTheyAre() throws IOException {
    String piece = "<a b='" + HALF + "'>";
    assertEquals(10 * piece.length(), read(piece.repeat(10)));
  }

  @Test
  void theSameWhetherReadByteByByteOrInBlocks() {
    byte[] bytes = ("<a>" + HALF + HALF).getBytes(StandardCharsets.UTF_8);
    MarkupGuard guard = new MarkupGuard(new ByteArrayInputStream(bytes));
    assertThrows(
        MarkupGuard.TooLong.class,
        () -> {
          while (guard.read() >= 0) {
            // to the end
          }
        });
  }

  /** A mark within a comment, an instruction or character data begins nothing new. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "<!-- %s<%s -->",
        "<!--->%s<%s-->",
        "<!--%s--<%s-->",
        "<?i %s<%s?>",
        "<?>%s<%s?>",
        "<![CDATA[%s<%s]]>",
        "<![CDATA[]%s]<]%s]]>"
      })
  void whatAParserCollectsWholeIsCountedWhole(String piece) {
    assertThrows(MarkupGuard.TooLong.class, () -> read(piece.formatted(HALF, HALF)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<!--%s--->%s",
        "<!--%s-->%s",
        "<?i %s??>%s",
        "<![CDATA[%s]]]>%s",
        "<!x %s<a>%s",
        "%s<%s"
      })
  void afterItsEndAPieceIsCountedAnew(String markup) throws IOException {
    String whole = markup.formatted(HALF, HALF.substring(9));
    assertEquals(whole.length(), read(whole));
  }

  @Test
  void bytesOfAnotherEncodingAreRefusedAtOnce() {
    for (var other :
        new java.nio.charset.Charset[] {
          StandardCharsets.UTF_16, StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE
        }) {
      byte[] bytes = "<a/>".getBytes(other);
      assertThrows(
          IOException.class,
          () -> new MarkupGuard(new ByteArrayInputStream(bytes)).readAllBytes(),
          other.name());
    }
  }
}
