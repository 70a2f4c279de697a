import { addBlankSheet } from "./blanksheet";
import { Book } from "./data";
import { addLoadSheet } from "./loadsheet";
import { addShopSheet, shopRange } from "./shopsheet";
import { addTodaySheet } from "./todaysheet";

/** The workbook that the page opens on. */
export function demoBook(): object {
  const book = new Book();
  addBlankSheet(book);
  addTodaySheet(book);
  addLoadSheet(book);
  addShopSheet(book);
  return book.data({ MyShop: shopRange });
}
