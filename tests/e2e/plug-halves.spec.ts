import { expect, test } from "@playwright/test";

test("one cavity lights in both views, and the other half takes no lead", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Two views side by side" }).click();
  const own = page.getByRole("region", { name: /^Face of plug X1, seen from the mating side/ });
  const wires = page.getByRole("region", { name: /^Face of plug X1, seen from the wire side/ });
  const four = { name: /^Cavity 4(,|$)/ };
  await own.getByRole("button", four).click();
  await expect(own.getByRole("button", four)).toHaveAttribute("aria-pressed", "true");
  await expect(wires.getByRole("button", four)).toHaveAttribute("aria-pressed", "true");
  // Mirrored: what is furthest left on the one is furthest right on the other.
  const x = async (of: typeof own, mark: number) => {
    const box = await of
      .getByRole("button", { name: new RegExp(`^Cavity ${mark}(,|$)`) })
      .boundingBox();
    return box?.x ?? Number.NaN;
  };
  expect(Math.sign((await x(own, 4)) - (await x(own, 1)))).toBe(
    -Math.sign((await x(wires, 4)) - (await x(wires, 1))),
  );

  await page.getByRole("button", { name: "The other half" }).click();
  const other = page.getByRole("region", { name: "Mating face of the other half of plug X1" });
  await expect(other.getByRole("button", four)).toHaveAttribute("aria-pressed", "true");
  expect(Math.sign((await x(other, 4)) - (await x(other, 1)))).toBe(
    -Math.sign((await x(own, 4)) - (await x(own, 1))),
  );
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await page.getByRole("button", { name: "Enter a reading" }).click();
  await page.getByRole("button", { name: "red lead: cavity 4" }).click();
  const asked = page.getByText("Touch the cavity of the red lead");
  await expect(asked).toBeVisible();
  await other.getByRole("button", { name: "Cavity 5" }).click();
  await expect(other.getByRole("button", { name: "Cavity 5" })).toHaveAttribute(
    "aria-pressed",
    "true",
  );
  // Still asked for: nothing was put where the other half was touched.
  await expect(asked).toBeVisible();
  await own.getByRole("button", { name: /^Cavity 5(,|$)/ }).click();
  await expect(asked).toHaveCount(0);
});
