package gapwise.exchange;

import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.exchange.form.BoneForm;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.ListForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The columns that say who was treated. */
final class BaselineFields {
  private final Field<Integer> patients =
      Field.several("patients", "Patients", "Patients treated.").like("26");
  private final Field<Integer> limbs = Field.several("limbs", "Limbs", "Limbs treated.");
  private final Field<Integer> defects = Field.several("defects", "Defects", "Defects treated.");
  private final SummaryFields age =
      new SummaryFields(
          "age_", "Age", CodeForm.units(Unit.Dimension.TIME), Optional.of(Unit.YEARS));
  private final CountFields male = CountFields.of("male", "Men and boys");
  private final CountFields smokers = CountFields.of("smokers", "Smokers at surgery");
  private final CountFields diabetics = CountFields.of("diabetics", "People with diabetes");
  private final CountFields infected = CountFields.of("infected", "Infected at the start");
  private final Field<YesOrNo> infectedAnswer =
      Field.of(
          "infected_answer",
          "Infected, in a word",
          "Where the paper only says that all (yes), none (no) or some (mixed) were infected.",
          CodeForm.of(YesOrNo.class));
  private final Field<List<BoneCount>> bones =
      Field.of(
              "bones",
              "Bones",
              "Femur, tibia, fibula or foot, with counts where printed.",
              new ListForm<>(new BoneForm()))
          .like("tibia 20; femur 12");
  private final Field<List<String>> segments =
      Field.list("segments", "Bone segments", "AO/OTA codes such as 42 for the shaft of the tibia.")
          .like("42");
  private final Field<String> boneWords =
      Field.text("bone_words", "Bone, as printed", "The bone in the words of the paper.");
  private final DefectFields defect = new DefectFields();
  private final SummaryFields followUp =
      new SummaryFields(
          "follow_up_", "Follow-up", CodeForm.units(Unit.Dimension.TIME), Optional.empty());
  private final Field<Integer> lost =
      Field.count("lost_to_follow_up", "Lost to follow-up", "Patients lost.");
  private final DetailFields characteristics =
      new DetailFields(DetailKind.ofPatients(), "Of the patients of the arm.");

  List<Field<?>> fields() {
    List<Field<?>> fields = new ArrayList<>(List.of(patients, limbs, defects));
    fields.addAll(List.of(bones, segments, boneWords));
    fields.addAll(defect.fields());
    fields.addAll(infected.fields());
    fields.add(infectedAnswer);
    fields.addAll(age.fields());
    fields.addAll(male.fields());
    fields.addAll(smokers.fields());
    fields.addAll(diabetics.fields());
    fields.addAll(followUp.fields());
    fields.add(lost);
    fields.addAll(characteristics.fields());
    return fields;
  }

  Optional<Baseline> read(RowReader row) {
    Baseline.Builder baseline = Baseline.with();
    row.get(patients).ifPresent(baseline::patients);
    row.get(limbs).ifPresent(baseline::limbs);
    row.get(defects).ifPresent(baseline::defects);
    age.read(row).ifPresent(baseline::age);
    male.read(row).ifPresent(baseline::male);
    smokers.read(row).ifPresent(baseline::smokers);
    diabetics.read(row).ifPresent(baseline::diabetics);
    infected.read(row).ifPresent(baseline::infected);
    row.get(infectedAnswer).ifPresent(baseline::infectedAnswer);
    row.get(bones).ifPresent(baseline::bones);
    row.get(segments).ifPresent(baseline::segments);
    row.get(boneWords).ifPresent(baseline::boneWords);
    defect.read(row).ifPresent(baseline::defect);
    followUp.read(row).ifPresent(baseline::followUp);
    row.get(lost).ifPresent(baseline::lostToFollowUp);
    baseline.characteristics(characteristics.read(row));
    return row.built(baseline::build, patients, limbs, defects, lost);
  }

  void write(RowWriter row, Baseline baseline) {
    row.put(patients, baseline.patients());
    row.put(limbs, baseline.limbs());
    row.put(defects, baseline.defects());
    age.write(row, baseline.age());
    male.write(row, baseline.male());
    smokers.write(row, baseline.smokers());
    diabetics.write(row, baseline.diabetics());
    infected.write(row, baseline.infected());
    row.put(infectedAnswer, baseline.infectedAnswer());
    if (!baseline.bones().isEmpty()) {
      row.put(bones, baseline.bones());
    }
    if (!baseline.segments().isEmpty()) {
      row.put(segments, baseline.segments());
    }
    row.put(boneWords, baseline.boneWords());
    defect.write(row, baseline.defect());
    followUp.write(row, baseline.followUp());
    row.put(lost, baseline.lostToFollowUp());
    characteristics.write(row, baseline.characteristics());
  }
}
