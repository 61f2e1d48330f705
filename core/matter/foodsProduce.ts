/**
 * Fruit and vegetables, whole unless they say cut, one food a line; `foodTable.ts` says what the columns are.
 *
 * @source usda-sr-legacy, ashrae-refrigeration, fsis-food-safety, from-memory
 */
export const produceFoods: string = `
iceberg lettuce | Lettuce, iceberg, whole | lettuce, head lettuce | 96 1 0 3 1.2 0.4 | -0.2 | produce chilled | keep whole | 7 | freezes badly, air 50 | 130 lump | usda-sr-legacy
romaine | Lettuce, romaine, whole | romaine lettuce, leaf lettuce, butter lettuce, endive, bok choy | 95 1 0 3 2.1 0.6 | ~-0.2 | produce chilled | keep whole | 7 | freezes badly, air 50 | 80 lump | usda-sr-legacy
spinach | Spinach, raw, whole | whole spinach, kale, chard, collards, herbs, cilantro, parsley, basil, mint, fresh herbs | 91 3 0 4 2.2 1.7 | -0.3 | produce chilled | keep whole | 5 | freezes badly, air 70 | 60 lump | usda-sr-legacy
salad | Greens, cut or washed, in a bag | bagged salad, salad mix, green salad, mixed greens, baby spinach, arugula, rocket, spring mix, chopped lettuce, shredded lettuce, cut greens, sprouts, microgreens | 94 1.5 0.2 3.5 2.0 0.8 | ~-0.3 | produce chilled | discard | 3-5 | freezes badly, air 80 | 60 lump | from-memory
tomato | Tomato, ripe | tomatoes, cherry tomatoes, grape tomatoes | 95 1 0 4 1.2 0.5 | ~-0.5 | produce chilled | keep | 7 | freezes badly | 60 lump | usda-sr-legacy
carrot | Carrot, raw | carrots, baby carrots, carrot sticks, vegetables, raw vegetables, veggies, beets, turnips, parsnips, root vegetables | 88 1 0 10 2.8 1.0 | -1.4 | produce chilled | keep | 21 | | 25 cylinder | usda-sr-legacy
cucumber | Cucumber, with peel | cucumbers, zucchini, courgette, summer squash, squash, eggplant, aubergine | 95 1 0 4 0.5 0.4 | -0.5 | produce chilled | keep | 7 | freezes badly | 45 cylinder | usda-sr-legacy
broccoli | Broccoli, raw | cauliflower, brussels sprouts, asparagus, artichoke | 89 3 0 7 2.6 0.9 | -0.6 | produce chilled | keep | 5 | air 40 | 80 lump | usda-sr-legacy
sweet pepper | Sweet pepper, red | bell pepper, bell peppers, peppers, jalapeno, chili peppers, chile peppers, green pepper | 92 1 0 6 2.1 0.5 | ~-0.7 | produce chilled | keep | 7 | freezes badly, air 50 | 75 lump | usda-sr-legacy
onion | Onion, raw | onions, red onion, green onion, scallions, leek, shallots, garlic, ginger | 89 1 0 9 1.7 0.3 | -0.9 | produce ambient | keep | 60 (ambient) | | 70 lump | usda-sr-legacy
celery | Celery | celery sticks, fennel, radishes, radish, rhubarb | 95 1 0 3 1.6 0.8 | -0.5 | produce chilled | keep | 14 | freezes badly, air 30 | 60 lump | usda-sr-legacy
cabbage | Cabbage | red cabbage, green cabbage, napa cabbage | 92 1 0 6 2.5 0.6 | -0.9 | produce chilled | keep | 21 | freezes badly, air 30 | 150 lump | usda-sr-legacy
mushroom | Mushroom, white | mushrooms, portobello | 92 3 0 3 1.0 0.8 | -0.9 | produce chilled | keep | 5 | freezes badly, air 40 | 35 lump | usda-sr-legacy
potato | Potato, raw | potatoes, raw potatoes, sweet potato, sweet potatoes, yams | 79 2 0 17 2.2 1.1 | -0.6 | produce ambient | keep | ambient | freezes badly | 60 lump | usda-sr-legacy
sweet corn | Sweet corn, raw | corn, corn on the cob, corn cobs, maize | 76 3 1 19 2.0 0.6 | -0.6 | produce chilled | keep | 2 | | 50 cylinder | usda-sr-legacy
green beans | Green beans, raw | string beans, snap peas, snow peas, peas, edamame, okra | 90 2 0 7 2.7 0.7 | -0.7 | produce chilled | keep | 5 | air 40 | 60 lump | usda-sr-legacy
frozen vegetables | Vegetables, frozen | frozen peas, frozen corn, frozen broccoli, frozen vegetable mix | 82 3.3 0.5 13.5 4.0 0.6 | ~-0.8 | frozen frozen | discard | - | air 40 | 50 slab | from-memory
strawberry | Strawberry | strawberries, berries, frozen berries, frozen fruit, kiwi, kiwis | 91 1 0 8 2.0 0.4 | -0.8 | produce chilled | keep whole | 3 | | 25 lump | usda-sr-legacy
blueberry | Blueberry | blueberries, cranberries, currants | 84 1 0 14 2.4 0.2 | ~-1.6 | produce chilled | keep whole | 7 | air 35 | 50 lump | usda-sr-legacy
raspberry | Raspberry | raspberries, blackberries | 86 1 1 12 6.5 0.5 | ~-0.6 | produce chilled | keep whole | 2 | air 40 | 40 lump | usda-sr-legacy
apple | Apple | apples, fruit, whole fruit, fresh fruit, pear, pears, peach, peaches, plum, plums, nectarines, apricots, mango, mangoes, pineapple, papaya | 86 0 0 14 2.4 0.2 | -1.1 | produce ambient | keep whole | 28 | freezes badly, air 20 | 75 lump | usda-sr-legacy
banana | Banana | bananas, plantain | 75 1 0 23 2.6 0.8 | -0.8 | produce ambient | keep whole | ambient | freezes badly | 35 cylinder | usda-sr-legacy
orange | Orange | oranges, lemon, lemons, lime, limes, grapefruit, mandarins, clementines, tangerines, citrus | 87 1 0 12 2.4 0.4 | -0.8 | produce ambient | keep whole | 21 | freezes badly | 70 lump | usda-sr-legacy
grapes | Grapes | grape, cherries, cherry | 81 1 0 18 0.9 0.5 | ~-1.6 | produce chilled | keep whole | 7 | air 30 | 60 lump | usda-sr-legacy
watermelon | Watermelon, whole | whole watermelon, whole melon | 91 1 0 8 0.4 0.2 | -0.4 | produce ambient | keep whole | 3-5 cut | freezes badly | 200 lump | usda-sr-legacy
cantaloupe | Cantaloupe, whole | whole cantaloupe, honeydew, muskmelon | 90 1 0 8 0.9 0.7 | ~-1.2 | produce ambient | keep whole | 3-5 cut | freezes badly, air 20 | 140 lump | usda-sr-legacy
cut fruit | Fruit, cut | fruit salad, cut melon, melon, cut watermelon, cut cantaloupe, sliced fruit, melon chunks, cut tomatoes, coconut | 89.5 0.7 0.2 9.2 1.0 0.4 | ~-0.8 | produce chilled | discard | 3-5 | freezes badly | 40 lump | from-memory
avocado | Avocado | avocados, whole avocado | 73 2 15 9 6.7 1.6 | ~-0.3 | produce ambient | keep whole | 3 | freezes badly | 60 lump | usda-sr-legacy
`;
