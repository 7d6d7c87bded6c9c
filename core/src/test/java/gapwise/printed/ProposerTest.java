package gapwise.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Outcome;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The readings are those that a person gives to the same words; the examples are invented. */
class ProposerTest {
  @ParameterizedTest(name = "{0} under \"{1}\" is {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "7.8 ± 1.8 (4–12) | mean ± SD (range), cm | mean=7.8 cm sd=1.8 cm min=4 cm max=12 cm",
        "7,8 ± 1,8        | mean ± SD, cm         | mean=7.8 cm sd=1.8 cm",
        "345 ± 84 mm      |                       | mean=345 mm spread_unstated=± 84 mm",
        "12 [8–15]        | cm, median [IQR]      | median=12 cm q1=8 cm q3=15 cm",
        "median 36 (IQR 24-48) mm |               | median=36 mm q1=24 mm q3=48 mm",
        "3.8-14.0         | range (cm)            | min=3.8 cm max=14 cm",
        "7.5 (3.6–12.8)   | cm                    | spread_unstated=7.5 (3.6-12.8) cm",
        "52 mm            | mean                  | mean=52 mm",
        "5.2 cm (SD 1.1)  | mean                  | mean=5.2 cm sd=1.1 cm",
        "16,9             | SD (mm)               | sd=16.9 mm",
        "5.2              | mean                  | mean?=5.2",
        "5.2              | cm                    | mean?=5.2 cm",
        "5.2 ± 1.1*       | mean ± SD (cm)        | mean=5.2 cm sd=1.1 cm",
        "5.2 ± 1.1        | median, cm            | median?=5.2 cm spread_unstated=± 1.1 cm",
        "28 weeks         | mean                  | mean?=28 weeks",
        "6.1 (95% CI 5.0 to 7.2) | mean, cm       | mean=6.1 cm ci_lower=5 cm ci_upper=7.2 cm",
        "1,234            | mean, mm              | mean?=1234 mm",
        "2019-05-03       | range, cm             | min?=3 cm max?=5 cm",
        "> 4              | cm                    | mean?=",
        "NR               | mean                  | mean-="
      })
  void readsALengthOfAGroup(String text, String header, String expected) {
    assertEquals(expected, told(text, Wanted.column("arms", "defect_length"), header, 0));
  }

  @ParameterizedTest(name = "{0} under \"{1}\" of {2} is {3}")
  @CsvSource(
      delimiter = '|',
      value = {
        "26/32 (81%)   |        | 32 | events=26 total=32 percent=81",
        "82.4 % (14/17)|        | 17 | events=14 total=17 percent=82.4",
        "13/14 (92,9 %)|        | 14 | events=13 total=14 percent=92.9",
        "14 of 17      |        | 17 | events=14 total=17",
        "20 (87%)      |        | 23 | events=20 percent=87",
        "20ᵃ (87%)     |        | 23 | events=20 percent=87",
        "20 (87)       | n (%)  | 23 | events=20 percent=87",
        "87 (20)       | % (n)  | 23 | events=20 percent=87",
        "20 (87)       |        | 23 | events=20 percent=87",
        "20 (87)       |        |  0 | events?=20 percent?=87",
        "20 (67%)      |        | 23 | events?=20 percent?=67",
        "26/32 (91%)   |        | 32 | events?=26 total?=32 percent?=91",
        "14/17         |        | 12 | events?=14 total?=17",
        "81            | %      | 32 | percent=81",
        "81            |        | 32 | events?=81",
        "8             |        |  0 | events?=8",
        "8             | n      |  0 | events=8",
        "81.5          |        | 32 | percent?=81.5",
        "0             |        |  0 | events=0",
        "11. Dez       |        | 12 | events?=11 total?=12",
        "2020-12-11    | n/N    | 12 | events?=11 total?=12",
        "see text      |        | 12 | events?="
      })
  void readsACountOfAGroup(String text, String header, double group, String expected) {
    assertEquals(
        expected,
        told(text, Wanted.outcome(Outcome.of("union")), header == null ? "" : header, group));
  }

  @ParameterizedTest(name = "{1} of a patient, {0}, is {3}")
  @CsvSource(
      delimiter = '|',
      value = {
        "36 mm    | defect_length  | cm     | defect_length=36 mm",
        "25 wk    | external_fixation_time |  | external_fixation_time=25 weeks",
        "25       | external_fixation_time |  | external_fixation_time?=25",
        "25 cm    | external_fixation_time |  | external_fixation_time?=25 cm",
        "18 months| age            |        | age=1.5 years",
        "47       | age            |        | age=47 years",
        "m        | sex            |        | sex=male",
        "+        | infected       |        | infected=yes",
        "1        | infected       |        | infected?=yes",
        "no union | time_to_union  | weeks  | union=no",
        "see text | time_to_union  | weeks  | time_to_union?=",
        "about 4 cm | defect_length |       | defect_length=4 cm defect_length_approximate=yes",
        "N/A      | time_to_union  | weeks  | time_to_union-="
      })
  void readsAPatientsCell(String text, String column, String header, String expected) {
    assertEquals(
        expected, told(text, Wanted.column("patients", column), header == null ? "" : header, 0));
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "Masquelet technique (n = 23) | method=induced-membrane",
        "Ilizarov transport           | method=bone-transport",
        "vascularised fibula          | method=vascularised-bone-flap",
        "transport, then allograft    | method?=",
        "growing it back              | method?="
      })
  void readsAMethod(String text, String expected) {
    assertEquals(expected, told(text, Wanted.column("arms", "method"), "", 0));
  }

  @Test
  void readsAuthorAndYearOfAStudy() {
    assertEquals(
        "first_author=Quillfen year=2014",
        told("Quillfen et al., 2014", Wanted.column("studies", "study_id"), "", 0));
  }

  @Test
  void saysWhatHeadersSay() {
    Said weeks = Said.read("Time to union, weeks, median (IQR)");
    assertTrue(weeks.says(Statistic.MEDIAN) && weeks.says(Statistic.QUARTILES));
    assertEquals("[time, to, union]", weeks.rest().toString());
    assertEquals(24, Said.read("Infection at 24 months").timePoint().orElseThrow().value());
    assertFalse(Said.read("Length of stay").says(Statistic.TOTAL));
  }

  private static String told(String text, Wanted wanted, String header, double group) {
    Said said = header == null ? Said.NOTHING : Said.read(header);
    OptionalDouble size = group > 0 ? OptionalDouble.of(group) : OptionalDouble.empty();
    List<Proposed> proposals = Proposer.propose(text, wanted, new Setting(said, size, false));
    return proposals.stream()
        .map(
            one ->
                one.column()
                        .replace("defect_length_mean", "mean")
                        .replaceAll("^defect_length_(?!approx)", "")
                    + switch (one.state()) {
                      case TAKEN -> "=";
                      case ASKED -> "?=";
                      case LEFT -> "-=";
                    }
                    + one.text()
                    + one.unit().map(unit -> " " + unit.symbol()).orElse(""))
        .collect(Collectors.joining(" "));
  }
}
