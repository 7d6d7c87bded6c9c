package gapwise.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.cohort.CentreName.Relation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Spellings of hospitals; all are invented. What counts as one hospital is our judgement. */
class CentreNameTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "University Hospital of Ozzelham | Ozzelham University Hospital | SAME",
        "Univ. Hosp. Ozzelham | University Hospital, Ozzelham | SAME",
        "Universitätsklinikum Ozzelham | University Hospital of Ozzelham | SAME",
        "Saint Urbald Hospital, Quömøre | St. Urbald's Hospital Quoemøre | SAME",
        "Department of Orthopaedics, Drobba Trauma Centre | Trauma Center Drobba | SAME",
        "Clinic of Drobba, Zubrania | Drobba Clinic | SAME",
        "Saint Urbald Hospital | Saint Urbald Hospital, Quomore | LIKE",
        "Drobbaville Hospital | Drobbavile Hospital | LIKE",
        "Drobba Hospital | Drobba General Hospital | LIKE",
        "SUHQ | Saint Urbald Hospital Quomore | LIKE",
        "Drobba Trauma Hospital | Clinic of Drobba | TOWN",
        "Saint Urbald Hospital, Drobba | Saint Idona Hospital, Drobba | TOWN",
        "Saint Urbald Hospital, Drobba | Saint Urbald Hospital, Quomore | DIFFERENT",
        "Drobba Hospital | Quomore Hospital | DIFFERENT"
      })
  void spellingsOfOneHospitalMeetAndTwoHospitalsStayTwo(String one, String two, Relation relation) {
    CentreName first = CentreName.of(one, "Zubrania");
    CentreName second = CentreName.of(two, "Zubrania");
    assertEquals(relation, first.to(second));
    assertEquals(relation, second.to(first), "in either order");
  }
}
