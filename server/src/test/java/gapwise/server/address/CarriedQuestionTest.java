package gapwise.server.address;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class CarriedQuestionTest {
  /** An address as it is written after a question mark. */
  private static Address address(String query) {
    Map<String, List<String>> values =
        Arrays.stream(query.split("&"))
            .map(one -> one.split("=", 2))
            .collect(
                Collectors.groupingBy(
                    one -> one[0],
                    LinkedHashMap::new,
                    Collectors.mapping(one -> one[1], Collectors.toList())));
    return new Address(values);
  }

  private static Map<String, List<String>> asked(String href) {
    return address(href.substring(href.indexOf('?') + 1)).parameters();
  }

  @Test
  void everythingThatIsAskedGoesAlongAndWhatOnlyAListHasStays() {
    String question =
        "outcome=union&from=4&to=8&method=bone-transport&method=allograft&bone=tibia&infected=yes"
            + "&follow-up-from=24&clock=injury&definition=bridging&least=3";
    CarriedQuestion carried =
        CarriedQuestion.of(address(question + "&page=2&order=title&column=year&shape=curve"));
    assertEquals(address(question).parameters(), asked(carried.at(PagePaths.BY_SIZE)));
  }

  @Test
  void aQuestionOfTwoMethodsIsAClaimOfTheFirstAndBackAgain() {
    String claim =
        CarriedQuestion.of(address("outcome=union&method=bone-transport&method=allograft&from=4"))
            .atClaim();
    assertEquals(
        address("a=bone-transport&b=allograft&outcome=union&from=4").parameters(), asked(claim));
    String back =
        CarriedQuestion.ofClaim(address(claim.substring(claim.indexOf('?') + 1) + "&says=less"))
            .at(PagePaths.POOLED);
    assertEquals(
        address("outcome=union&method=bone-transport&method=allograft&from=4").parameters(),
        asked(back));
  }

  @Test
  void severalOutcomesAreNoClaim() {
    String claim = CarriedQuestion.of(address("outcome=union&outcome=final-union")).atClaim();
    assertEquals(PagePaths.CLAIM, claim);
  }

  @Test
  void aCaseTakesWhatIsSaidOfOnePatientOnly() {
    CarriedQuestion range =
        CarriedQuestion.of(address("outcome=union&from=4&to=8&method=allograft&bone=tibia"));
    assertEquals("/case?method=allograft&bone=tibia", range.atCase());
    CarriedQuestion one =
        CarriedQuestion.of(address("from=8&to=8&method=allograft&method=bone-transport"));
    assertEquals("/case?length=8", one.atCase());
  }

  @Test
  void withoutAQuestionEveryPageStartsEmpty() {
    assertEquals(PagePaths.POOLED, CarriedQuestion.NONE.at(PagePaths.POOLED));
    assertEquals(PagePaths.CLAIM, CarriedQuestion.NONE.atClaim());
    assertEquals(PagePaths.CASE, CarriedQuestion.NONE.atCase());
  }
}
