package gapwise.server.page.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.desk.Draft;
import gapwise.exchange.Template;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TypedCurveTest {
  @Test
  void aNamedCurveIsOfTheGroupOfThatNameOrOfNoneYet() {
    Draft draft = Draft.of("named2031");
    int arm = draft.rows(Template.ARMS).get(0).number();
    Draft named = draft.withCell(arm, "label", "Free fibula", Optional.empty());
    assertEquals("A", TypedCurve.named(named, "free fibula"));
    assertEquals("A", TypedCurve.named(named, "A"));
    assertEquals("", TypedCurve.named(named, "Printed cage"), "never the only group by default");
  }
}
