package gapwise.exchange;

import gapwise.table.TableFile;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;

/** Reads a large template in a process of its own, whose heap a test limits. */
public final class LargeImport {
  private LargeImport() {}

  /** Reads the files named and prints what came of it. */
  public static void main(String[] names) {
    List<TableFile> files =
        java.util.Arrays.stream(names).map(n -> TableFile.of(Path.of(n))).toList();
    AtomicLong told = new AtomicLong();
    AtomicLong last = new AtomicLong();
    Imported read =
        Import.read(
            files,
            Set.of(),
            rows -> {
              told.incrementAndGet();
              last.set(rows);
            });
    if (read instanceof Imported.Ready ready) {
      long outcomes = ready.studies().stream().mapToLong(s -> s.outcomes().size()).sum();
      long patients = ready.studies().stream().mapToLong(s -> s.patients().size()).sum();
      System.out.printf(
          Locale.ROOT,
          "studies %d outcomes %d patients %d rows %d told %d%n",
          ready.studies().size(),
          outcomes,
          patients,
          last.get(),
          told.get());
    } else {
      System.out.println(read.getClass().getSimpleName());
      read.warnings().stream().limit(3).forEach(w -> System.out.println(w.problem().line()));
      if (read instanceof Imported.Wrong wrong) {
        wrong.problems().stream().limit(3).forEach(p -> System.out.println(p.line()));
      }
    }
  }

  /**
   * Writes four CSV files of invented studies: rows of outcomes and of patients in equal number.
   */
  public static void write(Path folder, int studies, int rowsEach) throws IOException {
    try (BufferedWriter study = open(folder, "studies");
        BufferedWriter arms = open(folder, "arms");
        BufferedWriter outcomes = open(folder, "outcomes");
        BufferedWriter patients = open(folder, "patients")) {
      study.write("study_id,title,first_author,year,union_definition,invented\r\n");
      arms.write(
          "study_id,arm_id,method,patients,defect_length_mean,defect_length_sd,defect_length_unit\r\n");
      outcomes.write(
          "study_id,arm_id,outcome,events,total,mean,sd,unit,time_point,time_point_unit,clock,definition\r\n");
      patients.write(
          "study_id,arm_id,patient,age,defect_length,defect_length_unit,union,time_to_union\r\n");
      for (int number = 0; number < studies; number++) {
        String id = "large-" + number;
        study.write(
            id
                + ",Invented "
                + name(number)
                + " series,N"
                + name(number)
                + ",2015,bridging,yes\r\n");
        arms.write(
            id
                + ",A,bone-transport,"
                + (rowsEach + 5 + number % 40)
                + ",6."
                + number % 9
                + ",2.2,cm\r\n");
        for (int row = 0; row < rowsEach; row++) {
          String start = id + ",A,";
          outcomes.write(
              row % 2 == 0
                  ? start + "union,20,24,,,," + (row + 1) + ",months,,definition " + row + "\r\n"
                  : start + "time-to-union,,,9.2,3.1,months,,,injury,definition " + row + "\r\n");
          patients.write(start + "case " + row + "," + patient(number, row) + ",yes,8.4\r\n");
        }
      }
    }
  }

  /** Letters that are like no other study's, since no two of these papers have a name in common. */
  private static String name(int number) {
    Random random = new Random(number * 0x9E3779B97F4A7C15L);
    StringBuilder letters = new StringBuilder();
    for (int at = 0; at < 14; at++) {
      letters.append((char) ('a' + random.nextInt(26)));
    }
    return letters.toString();
  }

  /** Age and length of a patient, of whom no other study tells. */
  private static String patient(int study, int row) {
    // Seeds that follow one another begin alike; multiplied they do not.
    Random random = new Random((1_000L * study + row) * 0x9E3779B97F4A7C15L);
    return (18 + random.nextInt(65)) + "," + (10 + random.nextInt(150)) / 10.0 + ",cm";
  }

  private static BufferedWriter open(Path folder, String sheet) throws IOException {
    return Files.newBufferedWriter(folder.resolve(sheet + ".csv"), StandardCharsets.UTF_8);
  }
}
