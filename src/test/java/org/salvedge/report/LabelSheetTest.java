package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.apache.poi.xssf.usermodel.XSSFPictureData;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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

    private static RGBLuminanceSource pixels(java.awt.image.BufferedImage image) {
        int w = image.getWidth();
        int h = image.getHeight();
        return new RGBLuminanceSource(w, h, image.getRGB(0, 0, w, h, null, 0, w));
    }
}
