package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.util.Units;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFPictureData;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LabelSheetTest {
    @TempDir
    Path folder;

    @Test
    void everyLabelScansAsItsUnit() throws Exception {
        List<LabelSheet.Label> labels = new ArrayList<>();
        for (int i = 1; i <= 30; i++) {
            labels.add(
                    new LabelSheet.Label(String.format("L0042-%03d", i), "Kestrel KX-55A1", "55 in, horizontal lines"));
        }
        Path file = folder.resolve("labels.xlsx");
        LabelSheet.write(file, labels, "A4");
        List<String> scanned = new ArrayList<>();
        try (XSSFWorkbook book = new XSSFWorkbook(file.toFile())) {
            for (XSSFPictureData picture : book.getAllPictures()) {
                var image = ImageIO.read(new ByteArrayInputStream(picture.getData()));
                scanned.add(new MultiFormatReader()
                        .decode(new BinaryBitmap(new HybridBinarizer(pixels(image))))
                        .getText());
            }
        }
        List<String> expected = new ArrayList<>();
        labels.forEach(l -> expected.addAll(List.of(l.unit(), l.unit())));
        assertThat(scanned).isEqualTo(expected);
    }

    @Test
    void sellersTextStaysText() throws Exception {
        Path file = folder.resolve("labels.xlsx");
        LabelSheet.write(file, List.of(new LabelSheet.Label("=L1-001", "=1+1", "@x")), "Letter");
        try (XSSFWorkbook book = new XSSFWorkbook(file.toFile())) {
            for (int r = 0; r < 3; r++) {
                assertThat(book.getSheetAt(0).getRow(r).getCell(1).getCellType())
                        .isEqualTo(CellType.STRING);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"A4, 595.3, 841.9", "Letter, 612, 792"})
    void twentyFourLabelsFillAPageUnscaledAndTheirSquareCodesAreSquare(String paper, double wide, double high)
            throws Exception {
        Path file = folder.resolve("labels.xlsx");
        LabelSheet.write(file, List.of(new LabelSheet.Label("L0042-001", "Kestrel KX-55A1", "55 in")), paper);
        try (XSSFWorkbook book = new XSSFWorkbook(file.toFile())) {
            XSSFSheet sheet = book.getSheetAt(0);
            double across = 0;
            for (int c = 0; c < 6; c++) {
                across += Units.pixelToPoints(sheet.getColumnWidthInPixels(c));
            }
            double down = 32 * sheet.getRow(0).getHeightInPoints();
            assertThat(across).isBetween(0.9 * (wide - 43.2), wide - 43.2);
            assertThat(down).isBetween(0.98 * (high - 50.4), high - 50.4);
            XSSFClientAnchor at = (XSSFClientAnchor)
                    sheet.getDrawingPatriarch().getShapes().get(0).getAnchor();
            double row = Units.toEMU(sheet.getRow(0).getHeightInPoints());
            double side = (at.getRow2() - at.getRow1()) * row + at.getDy2() - at.getDy1();
            assertThat(side).isCloseTo(at.getDx2() - at.getDx1(), within(0.01 * side));
        }
    }

    private static RGBLuminanceSource pixels(java.awt.image.BufferedImage image) {
        int w = image.getWidth();
        int h = image.getHeight();
        return new RGBLuminanceSource(w, h, image.getRGB(0, 0, w, h, null, 0, w));
    }
}
