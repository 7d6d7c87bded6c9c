package gapwise.figure.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class PageNumberTest {
  @Test
  void aPageOfManyIsToldInTitleAndFoot() {
    PageNumber second = new PageNumber(2, 3);
    assertEquals("Union, page 2 of 3", second.title("Union"));
    assertEquals(Optional.of("Page 2 of 3"), second.words());
    assertEquals(
        Optional.of("Page 2 of 3; the table (CSV) holds all 2000 series"), second.wordsAmong(2000));
  }

  @Test
  void ofTheOnlyPageNothingIsSaid() {
    PageNumber only = new PageNumber(1, 1);
    assertEquals("Union", only.title("Union"));
    assertEquals(Optional.empty(), only.words());
    assertEquals(Optional.empty(), only.wordsAmong(12));
  }
}
