package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LaneTest {
  @ParameterizedTest
  @CsvSource({
    "GET, /, FREE",
    "GET, /studies, FREE",
    "GET, /studies/{id}, FREE",
    "GET, /method, FREE",
    "GET, /assets/0123456789ab/gapwise.css, FREE",
    "GET, /api/v1/vocabularies, FREE",
    "GET, /pooled, ANSWERS",
    "GET, /claim/ways, ANSWERS",
    "GET, /over-time, ANSWERS",
    "GET, /api/v1/over-time, ANSWERS",
    "GET, /sheet, ANSWERS",
    "GET, /sheet/shown, ANSWERS",
    "GET, /sheet.pdf, ANSWERS",
    "GET, /compare/through, ANSWERS",
    "GET, /compare/findings.csv, ANSWERS",
    "GET, /compare/findings.docx, ANSWERS",
    "GET, /compare/weighing, ANSWERS",
    "GET, /compare/weighing/result, ANSWERS",
    "GET, /compare/cost/result, ANSWERS",
    "GET, /api/v1/cost-plane.svg, ANSWERS",
    "GET, /api/v1/forest.png, ANSWERS",
    "GET, /a-route-that-is-made-tomorrow, ANSWERS",
    "GET, /studies.csv, TABLES",
    "GET, /studies.xlsx, TABLES",
    "GET, /references, FREE",
    "GET, /references/{id}, FREE",
    "GET, /references/kept, FREE",
    "GET, /references/kept/{reference}, FREE",
    "GET, /references/searches.csv, FREE",
    "GET, /references/pairs, ANSWERS",
    "POST, /references/pairs, FREE",
    "POST, /references/{id}/keep, INTAKE",
    "GET, /references/{id}/{file}, TABLES",
    "GET, /desk/{draft}/figure, ANSWERS",
    "GET, /pictures/{picture}.png, ANSWERS",
    "POST, /desk/{draft}/figure, INTAKE",
    "POST, /desk/{draft}/figure/picture, INTAKE",
    "POST, /references, INTAKE",
    "GET, /screening, FREE",
    "GET, /screening/read, FREE",
    "POST, /screening/read, FREE",
    "GET, /screening/apart, FREE",
    "POST, /screening/apart, FREE",
    "POST, /screening/protocol, INTAKE",
    "GET, /screening/left-out.csv, TABLES",
    "GET, /extraction, FREE",
    "POST, /extraction, INTAKE",
    "GET, /extraction/{study}/settle, FREE",
    "POST, /extraction/{study}/settle, FREE",
    "GET, /extraction/agreement, ANSWERS",
    "POST, /api/v1/syntheses, PLANS",
    "POST, /api/v1/figure.png, PLANS",
    "POST, /api/v1/methods, PLANS",
    "GET, /api/v1/methods.txt, ANSWERS",
    "POST, /import, INTAKE",
    "POST, /import/{id}, INTAKE",
    "POST, /api/v1/imports, INTAKE"
  })
  void plainPagesNeverWaitAndWhatIsNotKnownToBePlainDoes(String method, String path, Lane lane) {
    assertEquals(lane, Lane.of(method, path));
  }
}
