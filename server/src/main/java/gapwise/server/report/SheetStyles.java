package gapwise.server.report;

import java.math.BigInteger;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFStyle;
import org.apache.poi.xwpf.usermodel.XWPFStyles;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTDecimalNumber;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTPPrGeneral;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTRPr;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTStyle;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STStyleType;

/** The headings of a text document, by which readers find their way. */
final class SheetStyles {
  private SheetStyles() {}

  static void addTo(XWPFDocument document) {
    XWPFStyles styles = document.createStyles();
    styles.addStyle(heading("Heading1", "heading 1", 0, 32));
    styles.addStyle(heading("Heading2", "heading 2", 1, 24));
  }

  /**
   * A heading.
   *
   * @param level 0 for the highest
   * @param halfPoints size of its letters
   */
  private static XWPFStyle heading(String id, String name, int level, int halfPoints) {
    CTStyle style = CTStyle.Factory.newInstance();
    style.setStyleId(id);
    style.addNewName().setVal(name);
    style.setType(STStyleType.PARAGRAPH);
    CTDecimalNumber outline = CTDecimalNumber.Factory.newInstance();
    outline.setVal(BigInteger.valueOf(level));
    CTPPrGeneral paragraph = style.addNewPPr();
    paragraph.setOutlineLvl(outline);
    CTRPr letters = style.addNewRPr();
    letters.addNewB();
    letters.addNewSz().setVal(BigInteger.valueOf(halfPoints));
    letters.addNewRFonts().setAscii("Arial");
    return new XWPFStyle(style);
  }
}
